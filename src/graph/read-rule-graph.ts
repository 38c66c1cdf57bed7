import type { Digest } from '../base/sha256.js';
import { canonical } from './canonical-json.js';
import { graphReaderWith, type GraphReader, type RuleGraphRead } from './graph-reader-with.js';
import { access } from './parts/access.js';
import { conditions } from './parts/conditions.js';
import { findings } from './parts/findings.js';
import { timing } from './parts/timing.js';

// Put together when it is first asked for, and not on import. It holds nothing from one text to the next.
let reader: GraphReader | undefined;

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
export function readRuleGraph(text: string, sha256?: Digest): RuleGraphRead {
  reader ??= graphReaderWith([timing, conditions, findings, access], canonical);
  return reader(text, sha256);
}
