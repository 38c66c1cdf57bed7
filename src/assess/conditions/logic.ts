import type { AndNode, NotNode, OrNode } from '../../graph/rule-graph.js';
import { compareMoments, type Moment } from '../../values/moment.js';
import type { Truth } from '../assessment.js';
import type { Finding } from '../finding.js';
import type { Test } from '../kinds.js';
import type { World } from '../world.js';

/** False if any part is false, else unknown if any is unknown, else true (Kleene). */
export function and(world: World, node: AndNode, test: Test): Finding {
  return joined(
    node.parts.map((part) => test(world, part)),
    'false',
    'true',
  );
}

/** True if any part is true, else unknown if any is unknown, else false (Kleene). */
export function or(world: World, node: OrNode, test: Test): Finding {
  return joined(
    node.parts.map((part) => test(world, part)),
    'true',
    'false',
  );
}

/** The opposite; unknown stays unknown. */
export function not(world: World, node: NotNode, test: Test): Finding {
  const found = test(world, node.part);
  const truth: Truth = found.truth === 'unknown' ? 'unknown' : found.truth === 'true' ? 'false' : 'true';
  return { ...found, truth };
}

/** `decisive` settles it as soon as one part has it; `otherwise` takes all of them. Only what decided is cited. */
function joined(parts: readonly Finding[], decisive: 'true' | 'false', otherwise: 'true' | 'false'): Finding {
  const deciders = parts.filter((part) => part.truth === decisive);
  const latest = newest(deciders);
  if (latest !== undefined) return { truth: decisive, evidence: latest.evidence, entries: latest.entries, missing: [] };
  const unknowns = parts.filter((part) => part.truth === 'unknown');
  const speaking = unknowns.length > 0 ? unknowns : parts;
  return {
    truth: unknowns.length > 0 ? 'unknown' : otherwise,
    evidence: newest(speaking)?.evidence ?? null,
    entries: [...new Set(speaking.flatMap((part) => part.entries))],
    missing: unknowns.flatMap((part) => part.missing),
  };
}

/** The finding with the newest evidence; the first of equals. */
function newest(findings: readonly Finding[]): Finding | undefined {
  return findings.reduce<Finding | undefined>(
    (best, each) => (best === undefined || isNewer(each.evidence, best.evidence) ? each : best),
    undefined,
  );
}

function isNewer(a: Moment | null, b: Moment | null): boolean {
  if (a === null) return false;
  return b === null || compareMoments(a, b) > 0;
}
