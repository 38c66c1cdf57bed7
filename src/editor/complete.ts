/**
 * What can be written next.
 */
import { definitionsOf, type Definition, type Home, type Model, type NameKind } from '../check/model.js';
import { instrumentKinds } from '../check/references-in-conditions.js';
import { classesOf, verdictWords, wordsOf } from '../check/words-of.js';
import { kindName } from '../check/words.js';
import { clauseExample } from '../syntax/clause-examples.js';
import { allWords } from '../syntax/tokens.js';
import { declarationWords, softWords } from '../syntax/words.js';
import { MONTH_NAMES, WEEKDAY_NAMES } from '../values/calendar.js';
import { UNITS, type Dimension } from '../values/units.js';
import { draftAt, fitting, siteAt, type Draft, type Site } from './probe.js';
import { textOf, type EditorView } from './view.js';

/** A word that could stand at the cursor. */
export interface Completion {
  readonly label: string;
  readonly sort: 'word' | 'declaration' | 'unit' | 'state' | NameKind;
  /** A few words beside the label. */
  readonly detail: string;
  /** What stands in the file where the label goes: the word being typed. */
  readonly start: number;
  readonly end: number;
  /** For a word that opens something, an example of it. */
  readonly example?: string;
}

type Proposal = Omit<Completion, 'start' | 'end'>;

const soft: ReadonlySet<string> = new Set(softWords);
const opening: ReadonlySet<string> = new Set(declarationWords);
const words = [...new Set([...allWords(), "day's", ...MONTH_NAMES, ...WEEKDAY_NAMES])];

/**
 * What can be written at an offset: names first, then what can be said of the thing named before, units, and words of the language. The word
 * that is being typed does not narrow the answer; that is for the editor to do.
 */
export function complete(view: EditorView, offset: number): readonly Completion[] {
  const draft = draftAt(textOf(view), offset);
  if (draft === undefined) return [];
  const site = siteAt(draft);
  const { model } = view.checked;
  const proposals = [
    ...(site === undefined || model === null
      ? []
      : [...names(model, homeOf(view, model), site), ...states(model, site), ...units(model, site)]),
    ...languageWords(draft, site),
  ];
  const once = new Map(proposals.map((each) => [`${each.sort} ${each.label}`, each]));
  return [...once.values()].map((each) => ({ ...each, start: offset - draft.typed.length, end: offset }));
}

/** Where what is declared in this file belongs. */
function homeOf({ file }: EditorView, model: Model): Home {
  return model.declarations.find(({ node }) => node.at.file === file)?.home ?? { prefix: '', host: undefined };
}

function names(model: Model, home: Home, site: Site): readonly Proposal[] {
  // What begins an act of an example may be read or may count.
  const kinds = site.path.at(-1)?.kind === 'act-meter' && site.leaf === 'name' ? instrumentKinds : site.kinds;
  if (kinds === undefined) return [];
  const found = kinds.flatMap((kind) =>
    definitionsOf(model, kind).flatMap((definition) => {
      const label = labelAt(home, definition.id);
      return label === undefined ? [] : [{ label, sort: kind, detail: `${definition.title} (${kindName(kind).replace(/^an? /, '')})` }];
    }),
  );
  return found;
}

/** How a thing is called from a home: without the home's own prefix. The machine's things keep their names everywhere. */
function labelAt({ prefix, host }: Home, id: string): string | undefined {
  if (prefix === '') return id;
  if (id.startsWith(`${prefix}.`)) return id.slice(prefix.length + 1);
  return host === undefined ? undefined : labelAt(host, id);
}

/** Positions, classes, bands and marks of the thing that was named before; verdicts on the machine. */
function states(model: Model, { path, kinds, leaf }: Site): readonly Proposal[] {
  if (kinds !== undefined || leaf !== 'name') return [];
  const parent = path.at(-1);
  if (parent?.kind === 'expect-machine') return verdictWords.map((label) => state(label, 'verdict'));
  if (isDeclaredName(path)) return [];
  const subject = subjectOf(model, path);
  if (subject === undefined) return [];
  const classOnly = parent?.kind === 'worse' || parent?.key === 'class' || parent?.kind === 'class-rule';
  return ((classOnly ? classesOf(subject) : wordsOf(subject)) ?? []).map((label) => state(label, subject.title));
}

function state(label: string, detail: string): Proposal {
  return { label, sort: 'state', detail };
}

/** A name that the declaration gives is the author's own. */
function isDeclaredName(path: Site['path']): boolean {
  const [top, ...below] = path;
  return top !== undefined && below.length === 0 && top.key === 'name';
}

/** The thing whose positions, classes, bands or marks can stand at a place. */
function subjectOf(model: Model, path: Site['path']): Definition | undefined {
  for (const { node, kind } of [...path].reverse()) {
    for (const key of ['subject', 'defect', 'part', 'instrument', 'name'] as const) {
      const name: unknown = key in node ? node[key as keyof typeof node] : undefined;
      if (typeof name !== 'object' || name === null || !('text' in name) || typeof name.text !== 'string') continue;
      if (kind === 'named-band' || kind === 'class-rule') continue;
      const { text } = name;
      const found = model.definitions.find((each) => each.id === text && (wordsOf(each) ?? []).length > 0);
      if (found !== undefined) return found;
    }
  }
  return undefined;
}

function units(model: Model, site: Site): readonly Proposal[] {
  if (site.leaf !== 'unit') return [];
  const wanted = dimensionsAt(model, site);
  return UNITS.filter(({ dimension }) => wanted === undefined || wanted.has(dimension)).map(({ symbol, dimension }) => ({
    label: symbol,
    sort: 'unit',
    detail: dimension,
  }));
}

/** What can be measured at a place; undefined where anything can. */
function dimensionsAt(model: Model, { path }: Site): ReadonlySet<Dimension> | undefined {
  const kinds = path.map(({ kind }) => kind);
  if (kinds.includes('tighten')) return new Set(['torque']);
  if (kinds.includes('takes') || kinds.includes('walk')) return new Set(['time']);
  if (kinds[0] === 'dipstick' && !kinds.includes('span')) return new Set(['volume']);
  if (kinds.includes('span')) return new Set(['time', 'calendar', ...model.meters.flatMap(({ node }) => dimensionOf(node.unit.text))]);
  if (kinds[0] === 'meter') return new Set(['time', 'length', 'cycles', 'starts', 'bales']);
  const subject = subjectOf(model, path)?.node ?? meterIn(model, path);
  if (subject?.kind === 'gauge' || subject?.kind === 'meter') return new Set(dimensionOf(subject.unit.text));
  return subject?.kind === 'dipstick' ? new Set(['volume']) : undefined;
}

function meterIn(model: Model, path: Site['path']): Definition['node'] | undefined {
  for (const { node } of path) {
    const name: unknown = 'name' in node ? node.name : 'meter' in node ? node.meter : undefined;
    const text = typeof name === 'object' && name !== null && 'text' in name ? name.text : undefined;
    const meter = model.meters.find(({ id }) => id === text);
    if (meter !== undefined) return meter.node;
  }
  return undefined;
}

function dimensionOf(symbol: string): readonly Dimension[] {
  return UNITS.filter((unit) => unit.symbol === symbol || unit.aliases.includes(symbol)).map(({ dimension }) => dimension);
}

/** Words of the language that fit. Where a name fits, a word that is free as a name would only be taken for one, but for a few. */
function languageWords(draft: Draft, site: Site | undefined): readonly Proposal[] {
  const few = site === undefined ? undefined : new Set(besides(site));
  const candidates = words.filter((word) => few === undefined || !soft.has(word) || few.has(word));
  return candidates.filter(fitting(draft)).map((label) => {
    const example = clauseExample(label);
    const sort = opening.has(label) ? ('declaration' as const) : ('word' as const);
    return { label, sort, detail: '', ...(example === undefined ? {} : { example }) };
  });
}

const acts = [
  'done', 'outing', 'plans', 'happens', 'opens', 'closes', 'attached', 'detached', 'stands', 'storage', 'refuelled', 'enters', 'states',
]; // prettier-ignore

/** Words that are more than names where a name can stand. */
function besides({ path, kinds = [], leaf }: Site): readonly string[] {
  if (leaf === 'unit') return path.some(({ kind }) => kind === 'span') ? ['calendar'] : [];
  const parent = path.at(-1);
  if (parent?.kind === 'act-meter' || parent?.kind === 'act-reads') return acts;
  if (parent?.kind === 'expect-task' && parent.key === 'task') return ['machine'];
  if (path.some(({ kind }) => kind === 'span') && kinds.includes('meter')) return ['work'];
  if (kinds.includes('position') && kinds.includes('gauge')) return ['machine', 'date'];
  return kinds.includes('event') ? ['refuelling'] : [];
}
