/**
 * Reads a compiled graph and holds it to all that makes it safe to use, but for its fingerprint.
 */
import { type Misfit, misfits } from '../base/misfits.js';
import type { Shapes } from '../base/shape.js';
import type { GraphPart } from './graph-part.js';
import { graphShape } from './graph-shape.js';
import { looseEnd } from './loose-end.js';
import { outOfBounds, tooMany } from './out-of-bounds.js';
import { intervals } from './parts/intervals.js';
import type { RuleGraph } from './rule-graph.js';

/** A graph that nobody has proved to be what was compiled, or one sentence without its full stop on why the text is none. */
export type UnprovedRuleGraphRead =
  { readonly ok: true; readonly graph: RuleGraph; readonly proved: false } | { readonly ok: false; readonly problem: string };

/** Reads the text of a graph without looking at its fingerprint. */
export type UnprovedGraphReader = (text: string) => UnprovedRuleGraphRead;

/**
 * As `graphReaderWith`, without the proof that a graph is what was compiled: for a page that has it from elsewhere (its own signature or integrity
 * check), or proves it by the host's cryptography (`sealedText`).
 *
 * Law: what it reads fits the shape of a graph, has no loose ends and no more in it than the bounds allow, so that whoever made it, it is safe to
 * assess and to explain. With a fingerprint that fits it is what `graphReaderWith` reads, and what that refuses for anything else is refused in the
 * same words.
 *
 * @example
 * const read = unprovedGraphReaderWith([timing])(text);
 * if (read.ok && sha256(sealedText(read.graph)) === read.graph.fingerprint) use(read.graph);
 */
export function unprovedGraphReaderWith(parts: readonly GraphPart[]): UnprovedGraphReader {
  const all = [intervals, ...parts];
  const shapes: Shapes = Object.assign({}, ...all.map((part) => part.shapes)) as Shapes;
  return (text) => {
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
    return loose === undefined ? { ok: true, graph, proved: false } : refused(`it does not hold together: ${loose}`);
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

/** A text that is no graph, and why. */
export function refused(problem: string): { readonly ok: false; readonly problem: string } {
  return { ok: false, problem };
}
