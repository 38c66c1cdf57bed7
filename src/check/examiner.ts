/**
 * Checks a schedule, and checks it again after a change without looking again at what the change does not touch.
 *
 * What is kept is kept by the identity of a declaration's node: a reader that gives back the same node for the same words (see
 * syntax/live-parser.ts) makes the second check short; one that reads everything anew makes each check a first one.
 *
 * INVARIANT: `examine` gives what it would give if nothing were kept. Of a declaration only that nothing is wrong with it is kept, never a
 * diagnostic, and only while no name in it means something else and the meters stay the same.
 */
import { patience } from '../base/near-name.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { collect, hasErrors } from '../diagnostics/collect.js';
import type { DeclarationNode, HeaderNode } from '../syntax/tree.js';
import type { Checked, CheckOptions } from './check.js';
import type { CheckContext, Rule } from './context.js';
import { limitsByTask } from './limits.js';
import { withoutFollowOn } from './follow-on.js';
import { gather, type Bring } from './load/gather.js';
import { defaultLimits } from './load/limits.js';
import type { Loader, Shelf } from './load/shelf.js';
import { idIn, isDefinitionOf, type Definition, type DefinitionOf, type Home, type Model, type NamingNode, type PlacedDeclaration, type Reference } from './model.js'; // prettier-ignore
import { define, nameTable, resolveNames, type NameTable } from './names.js';
import { countErrors, told } from './told.js';
import type { ExampleUses } from './references.js';
import { nodeIndex } from './walk.js';

/** What is known of one declaration. */
interface Known {
  readonly home: Home;
  readonly references: readonly Reference[];
  /** Ids that decide what its names mean; worked out when a name first changes. */
  ids?: ReadonlySet<string>;
  /** That no rule for single declarations has anything to say of it. */
  clean: boolean;
}

/** What could be read of the schedule's files. */
type ReadSoFar = Pick<CheckContext, 'headers' | 'whole' | 'complete'>;

/** How many declarations are looked at together: where nothing is wrong with any of them, that is all there is to do. */
const TOGETHER = 64;

/** What a schedule is examined with. */
export interface Examination {
  readonly rules: readonly Rule[];
  readonly bring: Bring;
  /** Of worked examples the names that they use. */
  readonly ofExample: ExampleUses;
}

/** Checks one schedule any number of times; a class because what it remembers is its own. */
export class Examiner {
  private known = new WeakMap<DeclarationNode, Known>();
  private readonly definitions = new WeakMap<NamingNode, Definition>();
  private readonly homes = new Map<string, Home>();
  private entries: NameTable['entries'] | undefined;
  private complete = true;

  private readonly ofDeclarations: readonly Rule[];
  private readonly ofSchedules: readonly Rule[];
  private readonly bring: Bring;
  private readonly ofExample: ExampleUses;

  constructor(
    private readonly parse: Shelf['parse'],
    { rules, bring, ofExample }: Examination,
  ) {
    this.ofDeclarations = rules.filter(({ scope }) => scope === 'declaration');
    this.ofSchedules = rules.filter(({ scope }) => scope === 'schedule');
    this.bring = bring;
    this.ofExample = ofExample;
  }

  /** As `check`. */
  examine(path: string, load: Loader, options: CheckOptions = {}): Checked {
    const limits = { ...defaultLimits, ...options.limits };
    const homeOf = (prefix: string, host: Home): Home => this.homeOf(prefix, host);
    const shelf: Shelf = {
      load,
      limits,
      parse: this.parse,
      homeOf,
      sources: [],
      diagnostics: [],
      unread: new Set(),
      opened: 0,
      complete: true,
    };
    const gathered = gather(shelf, path, this.bring);
    const header = gathered?.headers[0];
    if (gathered === undefined || header === undefined)
      return { model: null, diagnostics: collect(shelf.diagnostics), sources: shelf.sources };
    const table = nameTable(gathered.declarations, (node, home) => this.define(node, home));
    if (this.complete !== shelf.complete) this.known = new WeakMap();
    this.complete = shelf.complete;
    this.forget(gathered.declarations, table);
    const model = this.modelOf(header, gathered.declarations, table);
    // What goes past a limit is refused for that alone: looking further is what the limit saves.
    const read: ReadSoFar = { headers: gathered.headers, whole: !hasErrors(shelf.diagnostics), complete: shelf.complete };
    const isRefused = gathered.cut || countErrors(shelf.diagnostics) > limits.mistakes;
    const found = isRefused ? [] : this.problems(model, table, read, limits.mistakes);
    const own = read.whole ? found : withoutFollowOn(found, { sources: shelf.sources, ...gathered, unread: shelf.unread });
    return { model, diagnostics: collect(shelf.diagnostics, told(own, limits.mistakes)), sources: shelf.sources };
  }

  private homeOf(prefix: string, host: Home): Home {
    const known = this.homes.get(prefix);
    if (known?.host === host) return known;
    const home = { prefix, host };
    this.homes.set(prefix, home);
    return home;
  }

  private define(node: NamingNode, home: Home): Definition {
    const known = this.definitions.get(node);
    if (known?.home === home) return known;
    const definition = define(node, home);
    this.definitions.set(node, definition);
    return definition;
  }

  /** Forgets what the names that now mean something else have made doubtful. */
  private forget(declarations: readonly PlacedDeclaration[], table: NameTable): void {
    const before = this.entries;
    this.entries = table.entries;
    // The first time nothing is known that could be doubtful.
    if (before === undefined) return;
    const changed = [...differing(table.entries, before), ...differing(before, table.entries)];
    if (changed.length === 0) return;
    // A span without `of` counts on whatever meter there is.
    if (changed.some(({ kind }) => kind === 'meter')) this.known = new WeakMap();
    for (const { node } of declarations) {
      const known = this.known.get(node);
      if (known === undefined) continue;
      const ids = (known.ids ??= idsIn(node, known));
      if (changed.some(({ id }) => ids.has(id))) this.known.delete(node);
    }
  }

  private modelOf(header: HeaderNode, declarations: readonly PlacedDeclaration[], table: NameTable): Model {
    const references: Reference[] = [];
    const meaning = new Map<Reference['name'], Definition>();
    for (const declaration of declarations) {
      for (const reference of this.knownOf(declaration, table).references) {
        references.push(reference);
        if (reference.definition !== undefined) meaning.set(reference.name, reference.definition);
      }
    }
    const meters = table.definitions.filter((definition): definition is DefinitionOf<'meter'> => isDefinitionOf(definition, 'meter'));
    return { header, declarations, definitions: table.definitions, meters, references, meaning };
  }

  private knownOf(declaration: PlacedDeclaration, table: NameTable): Known {
    const { node, home } = declaration;
    const before = this.known.get(node);
    if (before?.home === home) return before;
    const references = resolveNames(declaration, table, this.ofExample);
    const known: Known = { home, references, clean: false };
    this.known.set(node, known);
    return known;
  }

  /** What is wrong; where that is more than `most` mistakes, not all of it. */
  private problems(model: Model, table: NameTable, read: ReadSoFar, most: number): readonly Diagnostic[] {
    const { headers } = read;
    const referencesOf = (node: DeclarationNode): readonly Reference[] => this.known.get(node)?.references ?? [];
    let limits: ReturnType<typeof limitsByTask> | undefined;
    const roots = [...headers, ...model.declarations.map(({ node }) => node)];
    const context: CheckContext = {
      model,
      table,
      ...read,
      nodes: nodeIndex(roots),
      referencesOf,
      limits: () => (limits ??= limitsByTask(model)),
      patience: patience(),
    };
    const none: CheckContext = { ...context, model: { ...model, declarations: [], references: [] }, nodes: nodeIndex(headers) };
    const found = [...this.ofSchedules.flatMap((rule) => rule.check(context)), ...this.ofDeclarations.flatMap((rule) => rule.check(none))];
    const doubtful = model.declarations.filter(({ node }) => this.known.get(node)?.clean !== true);
    let errors = countErrors(found);
    for (let start = 0; start < doubtful.length && errors <= most; start += TOGETHER) {
      for (const declaration of this.unclean(doubtful.slice(start, start + TOGETHER), context)) {
        if (errors > most) break;
        const more = this.problemsOf([declaration], context);
        errors += countErrors(more);
        found.push(...more);
      }
    }
    return found;
  }

  /** None of the declarations where nothing is wrong with any of them; otherwise all, for it is not known with which. */
  private unclean(declarations: readonly PlacedDeclaration[], context: CheckContext): readonly PlacedDeclaration[] {
    // With none to spare for names, so that what is told does not depend on what was looked at together.
    return this.problemsOf(declarations, { ...context, patience: { left: 0 } }).length === 0 ? [] : declarations;
  }

  private problemsOf(declarations: readonly PlacedDeclaration[], context: CheckContext): readonly Diagnostic[] {
    const references = declarations.flatMap(({ node }) => context.referencesOf(node));
    const model: Model = { ...context.model, declarations, references };
    const part: CheckContext = { ...context, model, nodes: nodeIndex(declarations.map(({ node }) => node)) };
    const found = this.ofDeclarations.flatMap((rule) => rule.check(part));
    if (found.length > 0) return found;
    for (const { node } of declarations) {
      const known = this.known.get(node);
      if (known !== undefined) known.clean = true;
    }
    return found;
  }
}

/** Definitions that the other table has not, or has as something else. */
function differing(table: NameTable['entries'], other: NameTable['entries']): readonly Definition[] {
  const found: Definition[] = [];
  for (const [kind, definitions] of table) {
    const others = other.get(kind);
    for (const [id, definition] of definitions) if (others?.get(id) !== definition) found.push(definition);
  }
  return found;
}

function idsIn(node: DeclarationNode, { references, home }: Known): ReadonlySet<string> {
  const names = [...references.map(({ name }) => name.text), ...('name' in node ? [node.name.text] : [])];
  return new Set(names.flatMap((name) => idsOf(name, home)));
}

/** Where a name may be declared that is written at this home. */
function idsOf(name: string, home: Home): readonly string[] {
  const ids: string[] = [];
  for (let scope: Home | undefined = home; scope !== undefined; scope = scope.host) ids.push(idIn(scope, name));
  return ids;
}
