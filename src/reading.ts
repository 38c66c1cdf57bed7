/**
 * A reader of rule graphs that hold just those kinds of thing that your schedules ask for, beside an engine of just those kinds.
 *
 * `readRuleGraph` of `duewright/engine` is all of them. `unprovedGraphReaderWith` leaves the proof of the fingerprint to the page or to its host.
 */
export { canonical } from './graph/canonical-json.js';
export { sealedText } from './graph/fingerprint.js';
export { graphReaderWith } from './graph/graph-reader-with.js';
export { access } from './graph/parts/access.js';
export { conditions } from './graph/parts/conditions.js';
export { findings } from './graph/parts/findings.js';
export { timing } from './graph/parts/timing.js';
export { unprovedGraphReaderWith } from './graph/unproved-graph-reader-with.js';

export type { GraphPart } from './graph/graph-part.js';
export type { Ordered } from './graph/fingerprint.js';
export type { GraphReader, RuleGraphRead } from './graph/graph-reader-with.js';
export type { UnprovedGraphReader, UnprovedRuleGraphRead } from './graph/unproved-graph-reader-with.js';
