/**
 * The way back from a file: a compiled graph, believed only if it is whole.
 */
import { graphFingerprint } from './fingerprint.js';
import type { RuleGraph } from './rule-graph.js';

/** A graph, or one sentence without its full stop on why the text is none. */
export type RuleGraphRead = { readonly ok: true; readonly graph: RuleGraph } | { readonly ok: false; readonly problem: string };

/**
 * Reads the JSON that `compile` gave, as text.
 *
 * Law: what is accepted is a graph of this format and version whose fingerprint fits all its other content, and each of whose nodes
 * stands at its own id and refers to earlier nodes only; a graph that was edited, cut off or mixed up is refused. The fingerprint tells of accidents and careless hands, not
 * of forgers: a graph from someone you do not trust is best compiled anew from its text.
 *
 * @param sha256 the host's own, as hex digits of a text's UTF-8 bytes; ours if not given.
 * @example readRuleGraph(JSON.stringify(graph)) // { ok: true, graph }
 */
export function readRuleGraph(text: string, sha256?: (text: string) => string): RuleGraphRead {
  const value = parseJson(text);
  if (!isRecord(value)) return refused('it is not a JSON object');
  if (value['format'] !== 'duewright-rule-graph') return refused('it is not a rule graph');
  if (value['version'] !== 1)
    return refused(`it is of version ${JSON.stringify(value['version']) ?? 'none'}, and this program reads version 1`);
  const graph = value as unknown as RuleGraph;
  if (graph.fingerprint !== graphFingerprint(graph, sha256))
    return refused('its fingerprint does not fit its content: it was changed since it was compiled');
  if (!Array.isArray(graph.nodes) || !graph.nodes.every(standsInOrder)) return refused('its nodes are out of order');
  return { ok: true, graph };
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function standsInOrder(node: unknown, index: number): boolean {
  if (!isRecord(node) || node['id'] !== index) return false;
  const { condition, then, first, part, parts } = node;
  const references: readonly unknown[] = [condition, then, first, part, ...(Array.isArray(parts) ? (parts as unknown[]) : [])];
  return references.every((each) => typeof each !== 'number' || (Number.isInteger(each) && each >= 0 && each < index));
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function refused(problem: string): RuleGraphRead {
  return { ok: false, problem };
}
