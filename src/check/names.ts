/**
 * The table of names: what is declared where, and what a name means where it is used.
 *
 * A name may be used again for a thing of another kind (`meter engine`, `position engine`), unless both kinds can be meant at
 * one place: then it is a duplicate. In an attachment's schedule a name is looked for at home first, then on the machine.
 */
import type { NameNode } from '../syntax/tree.js';
import { idIn, type Definition, type Home, type NameKind, type NamingNode, type PlacedDeclaration, type Reference } from './model.js';
import { usesIn, type ExampleUses } from './references.js';

/** Names by kind and id. */
export interface NameTable {
  readonly definitions: readonly Definition[];
  /** Later declarations of a name that is taken, each with the one that took it. */
  readonly duplicates: readonly { readonly later: Definition; readonly earlier: Definition }[];
  readonly find: (kind: NameKind, id: string) => Definition | undefined;
  /** Names of these kinds that can be written at this home: its own without the attachment's name, and the machine's. */
  readonly visible: (kinds: readonly NameKind[], home: Home) => readonly string[];
  /** By kind and id. */
  readonly entries: ReadonlyMap<NameKind, ReadonlyMap<string, Definition>>;
}

/** Kinds that can be meant at one place, and so share their names. */
const families: readonly (readonly NameKind[])[] = [
  ['meter', 'gauge', 'dipstick'],
  ['position', 'attachment', 'defect', 'gauge', 'dipstick'],
];

/** Enters every declaration; the first of a name counts. */
export function nameTable(declarations: readonly PlacedDeclaration[], defines: typeof define = define): NameTable {
  const entries = new Map<NameKind, Map<string, Definition>>();
  const definitions: Definition[] = [];
  const duplicates: { later: Definition; earlier: Definition }[] = [];
  const find = (kind: NameKind, id: string): Definition | undefined => entries.get(kind)?.get(id);
  for (const { node, home } of declarations) {
    if (!isNaming(node)) continue;
    const definition = defines(node, home);
    const earlier = takenBy(definition, find);
    if (earlier !== undefined) {
      duplicates.push({ later: definition, earlier });
      continue;
    }
    definitions.push(definition);
    const known = entries.get(definition.kind);
    if (known === undefined) entries.set(definition.kind, new Map([[definition.id, definition]]));
    else known.set(definition.id, definition);
  }
  return { definitions, duplicates, find, visible: visibleIn(definitions), entries };
}

/** Worked out once for each home and kinds: in a schedule full of unknown names it is asked again and again. */
function visibleIn(definitions: readonly Definition[]): NameTable['visible'] {
  const known = new Map<string, readonly string[]>();
  return (kinds, home) => {
    const key = [...kinds, home.prefix].join(' ');
    const names = known.get(key) ?? namesFrom(definitions, kinds, home);
    known.set(key, names);
    return names;
  };
}

function namesFrom(definitions: readonly Definition[], kinds: readonly NameKind[], home: Home): readonly string[] {
  const names = new Set<string>();
  for (let scope: Home | undefined = home; scope !== undefined; scope = scope.host) {
    const start = scope.prefix === '' ? '' : `${scope.prefix}.`;
    for (const { kind, id } of definitions) if (kinds.includes(kind) && id.startsWith(start)) names.add(id.slice(start.length));
  }
  return [...names];
}

function takenBy({ kind, id }: Definition, find: NameTable['find']): Definition | undefined {
  for (const rival of rivalsOf(kind)) {
    const earlier = find(rival, id);
    if (earlier !== undefined) return earlier;
  }
  return undefined;
}

/** Every use of a name in one declaration, with what it means. */
export function resolveNames({ node, home }: PlacedDeclaration, table: NameTable, ofExample: ExampleUses): readonly Reference[] {
  return usesIn(node, ofExample).map(({ name, kinds }) => ({ name, kinds, home, definition: lookUp(table, name, kinds, home) }));
}

/** What a name means at a place where these kinds can be meant; the kinds first named go first. */
export function lookUp(table: NameTable, name: NameNode, kinds: readonly NameKind[], home: Home): Definition | undefined {
  for (let scope: Home | undefined = home; scope !== undefined; scope = scope.host) {
    for (const kind of kinds) {
      const found = table.find(kind, idIn(scope, name.text));
      if (found !== undefined) return found;
    }
  }
  return undefined;
}

const nameless: ReadonlySet<string> = new Set(['rest', 'walk', 'never', 'change', 'remove', 'example']);

/** Whether a declaration gives something a name. */
export function isNaming(node: { readonly kind: string }): node is NamingNode {
  return !nameless.has(node.kind);
}

/** For each kind in a family, the kinds that a name of it is looked for among, its own first. */
const rivals: ReadonlyMap<NameKind, readonly NameKind[]> = new Map(
  families.flat().map((kind) => [kind, [...new Set([kind, ...families.filter((family) => family.includes(kind)).flat()])]]),
);

/** The kinds among which a name can be had only once, the one that is asked about first. */
export function rivalsOf(kind: NameKind): readonly NameKind[] {
  return rivals.get(kind) ?? [kind];
}

/** What a declaration gives a name to. */
export function define(node: NamingNode, home: Home): Definition {
  const title = node.kind === 'position' ? (node.title?.text ?? node.name.text) : node.kind === 'hazard' ? node.text.text : node.title.text;
  return { kind: node.kind, id: idIn(home, node.name.text), name: node.name.text, title, at: node.name.at, node, home };
}
