/**
 * The way back from a file: a compiled graph, believed only if it is whole.
 */
import { type Misfit, misfits } from '../base/misfits.js';
import type { Shapes } from '../base/shape.js';
import { fingerprintFits } from './fingerprint.js';
import type { GraphPart } from './graph-part.js';
import { graphShape } from './graph-shape.js';
import { looseEnd } from './loose-end.js';
import { outOfBounds, tooMany } from './out-of-bounds.js';
import { intervals } from './parts/intervals.js';
import type { RuleGraph } from './rule-graph.js';

/** A graph, or one sentence without its full stop on why the text is none. */
export type RuleGraphRead = { readonly ok: true; readonly graph: RuleGraph } | { readonly ok: false; readonly problem: string };

/** Puts the keys of every object of a value in the order in which `compile` writes them. */
export type Ordered = (value: unknown) => unknown;

/** Reads the text of a graph. `sha256` is the host's own, as hex digits of a text's UTF-8 bytes; ours if not given. */
export type GraphReader = (text: string, sha256?: (text: string) => string) => RuleGraphRead;

/**
 * A reader of graphs that hold just those kinds of thing that your schedules ask for, so that a bundle carries no others.
 *
 * Law: what it reads is what `readRuleGraph` reads, and as that reads it. A graph with anything else in it is refused, with the line of the schedule
 * that asks for it.
 *
 * @param ordered reads graphs that a database wrote in an order of its own; without it they are refused.
 * @example
 * const read = graphReaderWith([timing])(text);
 * if (read.ok) use(read.graph);
 */
export function graphReaderWith(parts: readonly GraphPart[], ordered?: Ordered): GraphReader {
  const all = [intervals, ...parts];
  const shapes: Shapes = Object.assign({}, ...all.map((part) => part.shapes)) as Shapes;
  return (text, sha256) => {
    if (text.length > LONGEST) return refused(`it has ${text.length} characters, and the limit is ${LONGEST}`);
    const value = parseJson(text);
    if (!isRecord(value)) return refused('it is not a JSON object');
    if (value['format'] !== 'duewright-rule-graph') return refused('it is not a rule graph');
    if (value['version'] !== 1) return refused(`it is of version ${versionOf(value['version'])}, and this program reads version 1`);
    const [odd] = misfits(value, graphShape, shapes, 1);
    if (odd?.unread === true) return refused(unread(value, odd));
    if (odd !== undefined) return refused(`it is not built as a rule graph is: ${placeOf(odd)} should be ${odd.wanted}`);
    const graph = value as unknown as RuleGraph;
    const loose = tooMany(graph) ?? looseEnd(graph, all) ?? outOfBounds(graph);
    if (loose !== undefined) return refused(`it does not hold together: ${loose}`);
    return fingerprintFits(graph, ordered, sha256)
      ? { ok: true, graph }
      : refused('its fingerprint does not fit its content: it was changed since it was compiled');
  };
}

/** What stands at a place that is not read here, with the line in which the schedule says it, or the task or step around it. */
function unread(graph: unknown, { path }: Misfit): string {
  let value = graph;
  let line: unknown;
  for (const name of path) {
    value = Reflect.get(Object(value) as object, name);
    const { origin } = Object(value) as { readonly origin?: unknown };
    line = (Object(origin) as { readonly line?: unknown }).line ?? line;
  }
  const { kind } = Object(value) as { readonly kind?: unknown };
  const what = [kind, ...path.toReversed()].find((name): name is string => typeof name === 'string' && /^[a-z][\w-]{1,60}$/i.test(name));
  const place = Number.isSafeInteger(line) ? `line ${Number(line)} of the schedule` : 'it';
  return `${place} asks for \`${what ?? '…'}\`, which this reader was not given`;
}

/** Longest text that is taken for a graph, in UTF-16 code units: 16 Mi, several times what 5,000 rules come to. */
const LONGEST = 16_777_216;

/** Names that an author, or anybody, chose are shown only where they can do no harm to a terminal. */
function placeOf({ path }: Misfit): string {
  return path.length === 0 ? 'it' : `\`${path.map((name) => (/^[\w-]{1,60}$/.test(name) ? name : '…')).join('.')}\``;
}

function versionOf(value: unknown): string {
  return typeof value === 'number' ? String(value) : 'none';
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function refused(problem: string): RuleGraphRead {
  return { ok: false, problem };
}
