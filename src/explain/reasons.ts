/** What the record of a run says of one task: its rules with what they came to, and what that rests on. */
import type { Hold, Notice, Observation } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import type { NodeId, Task } from '../graph/rule-graph.js';
import { citedEntries } from './cited-entries.js';
import type { Explanation, RuleFacts } from './explanation.js';
import type { TaskOutline } from './outline.js';
import { ruleFacts } from './rule-facts.js';
import type { Run } from './run.js';
import { Seen } from './seen.js';
import { unknownsOf } from './unknowns.js';

/** The part of an explanation that says why. */
export type Reasons = Pick<Explanation, 'rule' | 'gate' | 'others' | 'entries' | 'unknown' | 'holds' | 'notices'>;

const NOTHING: readonly never[] = [];

/** Reads the record of a task; nothing is worked out that it does not hold. */
export function reasonsOf({ outline, assessment, assessed, observations, history }: Run): Reasons {
  const recorded = { seen: new Seen(observations), history };
  const rule = outline.rule === null ? null : ruleFacts(recorded, outline.rule);
  return {
    rule,
    gate: outline.gate === null ? null : ruleFacts(recorded, outline.gate),
    others: rule === null ? NOTHING : otherLeaves(rule, assessed.governing),
    entries: citedEntries(observations, assessment.setAside, (meter) => speaksOf(outline, observations, meter), history),
    unknown: unknownsOf(assessed, observations),
    holds: those(assessment.holds, (hold) => holdTouches(hold, outline.task)),
    notices: those(assessment.notices, (notice) => noticeTouches(notice, outline.task)),
  };
}

function those<T>(all: readonly T[], touches: (one: T) => boolean): readonly T[] {
  return all.length === 0 ? NOTHING : all.filter(touches);
}

/** Rules that can speak for themselves, the governing one left out, in the order they were written. */
function otherLeaves(rule: RuleFacts, governing: NodeId | null): readonly NodeId[] {
  const found: NodeId[] = [];
  gatherLeaves(rule, governing, found);
  return found;
}

function gatherLeaves(rule: RuleFacts, governing: NodeId | null, into: NodeId[]): void {
  const { kind, id } = rule.node;
  if (kind === 'any' || kind === 'whichever' || kind === 'first') for (const part of rule.parts) gatherLeaves(part, governing, into);
  else if (id !== governing && rule.state !== undefined && !holdsNode(rule, governing)) into.push(id);
}

function holdsNode(rule: RuleFacts, id: NodeId | null): boolean {
  return rule.parts.some((part) => part.node.id === id || holdsNode(part, id));
}

/** Whether a rule that was looked at speaks of the meter; the fall of a level goes by hours without naming theirs. */
function speaksOf({ words }: TaskOutline, observations: readonly Observation[], meter: string): boolean {
  return observations.some(({ node }) => words.get(node)?.has(meter) === true || words.get(node)?.has('sooner') === true);
}

function holdTouches(hold: Hold, task: Task): boolean {
  switch (hold.why.is) {
    case 'stop':
      return false;
    case 'defect':
      return task.mends.includes(hold.why.defect);
    case 'reading':
    case 'late':
      return hold.why.task === task.id;
    default:
      return assertNever(hold.why);
  }
}

function noticeTouches(notice: Notice, task: Task): boolean {
  return notice.from.is === 'reading' ? notice.from.task === task.id : task.mends.includes(notice.from.defect);
}
