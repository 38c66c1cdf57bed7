/** What the record of a run says of one task: its rules with what they came to, and what that rests on. */
import type { Assessment, Hold, Notice, Observation } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import type { NodeId, Task } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import { citedEntries } from './cited-entries.js';
import type { Explanation, RuleFacts } from './explanation.js';
import type { TaskOutline } from './outline.js';
import { ruleFacts } from './rule-facts.js';
import type { Run } from './run.js';
import { unknownsOf } from './unknowns.js';

/** The part of an explanation that says why. */
export type Reasons = Pick<Explanation, 'rule' | 'gate' | 'others' | 'entries' | 'unknown' | 'holds' | 'notices'>;

const NOTHING: readonly never[] = [];

/** Reads the record of a task; nothing is worked out that it does not hold. */
export function reasonsOf({ outline, assessment, assessed, observations, history }: Run): Reasons {
  const recorded = { observations: byNode(observations), history };
  const rule = outline.rule === null ? null : ruleFacts(recorded, outline.rule);
  return {
    rule,
    gate: outline.gate === null ? null : ruleFacts(recorded, outline.gate),
    others: rule === null ? NOTHING : otherLeaves(rule, assessed.governing),
    entries: citedEntries(observations, suspectsAmong(assessment.setAside, outline, observations), history),
    unknown: unknownsOf(assessed, observations),
    holds: those(assessment.holds, (hold) => holdTouches(hold, outline.task)),
    notices: those(assessment.notices, (notice) => noticeTouches(notice, outline.task)),
  };
}

function byNode(observations: readonly Observation[]): ReadonlyMap<NodeId, Observation> {
  const found = new Map<NodeId, Observation>();
  for (const seen of observations) found.set(seen.node, seen);
  return found;
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

const NONE: ReadonlyMap<EntryId, readonly EntryId[]> = new Map();

/** Suspect readings of the meters that the rules speak of, as far as they were looked at, with the entries by which each does not count. */
function suspectsAmong(
  setAside: Assessment['setAside'],
  outline: TaskOutline,
  observations: readonly Observation[],
): ReadonlyMap<EntryId, readonly EntryId[]> {
  let found: Map<EntryId, readonly EntryId[]> | null = null;
  let words: ReadonlySet<string> | null = null;
  for (const { entry, suspect } of setAside) {
    if (suspect === undefined) continue;
    words ??= new Set(observations.flatMap(({ node }) => [...(outline.words.get(node) ?? [])]));
    if (!(words.has(suspect.meter) || words.has('sooner'))) continue;
    found ??= new Map();
    found.set(entry, [...(found.get(entry) ?? []), suspect.against, ...(suspect.alongside ?? [])]);
  }
  return found ?? NONE;
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
