/**
 * The way back from a file: a compiled graph, believed only if it is whole.
 */
import { type Misfit, misfits } from '../base/misfits.js';
import { fingerprintFits } from './fingerprint.js';
import { graphShape, graphShapes } from './graph-shape.js';
import { looseEnd } from './loose-end.js';
import { outOfBounds, tooMany } from './out-of-bounds.js';
import type { RuleGraph } from './rule-graph.js';

/** A graph, or one sentence without its full stop on why the text is none. */
export type RuleGraphRead = { readonly ok: true; readonly graph: RuleGraph } | { readonly ok: false; readonly problem: string };

/** Longest text that is taken for a graph, in UTF-16 code units: 16 Mi, several times what 5,000 rules come to. */
const LONGEST = 16_777_216;

/**
 * Reads the JSON that `compile` gave, as text.
 *
 * Law: what is accepted is a graph of this format and version, of the shape of `grammar/rule-graph.schema.json`, without loose ends (each
 * node refers to earlier nodes of the right sort, each name to a thing of the graph), whose fingerprint fits all its other content; a
 * graph that was edited, cut off or mixed up is refused. The fingerprint tells of accidents and careless hands, not of forgers: a graph from someone
 * you do not trust is safe to read and to assess, but to know what it says compile it anew from its text.
 *
 * @param sha256 the host's own, as hex digits of a text's UTF-8 bytes; ours if not given.
 * @example readRuleGraph(JSON.stringify(graph)) // { ok: true, graph }
 */
export function readRuleGraph(text: string, sha256?: (text: string) => string): RuleGraphRead {
  if (text.length > LONGEST) return refused(`it has ${text.length} characters, and the limit is ${LONGEST}`);
  const value = parseJson(text);
  if (!isRecord(value)) return refused('it is not a JSON object');
  if (value['format'] !== 'duewright-rule-graph') return refused('it is not a rule graph');
  if (value['version'] !== 1) return refused(`it is of version ${versionOf(value['version'])}, and this program reads version 1`);
  const [odd] = misfits(value, graphShape, graphShapes, 1);
  if (odd !== undefined) return refused(`it is not built as a rule graph is: ${placeOf(odd)} should be ${odd.wanted}`);
  const graph = value as unknown as RuleGraph;
  const loose = tooMany(graph) ?? looseEnd(graph) ?? outOfBounds(graph);
  if (loose !== undefined) return refused(`it does not hold together: ${loose}`);
  return fingerprintFits(graph, sha256)
    ? { ok: true, graph }
    : refused('its fingerprint does not fit its content: it was changed since it was compiled');
}

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
