/**
 * The rules of a task with what the run recorded for them.
 */
import type { LimitFacts, Missing, Observation } from '../assess/assessment.js';
import type { EntryId } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { RuleFacts } from './explanation.js';
import type { KnownHistory } from './known-history.js';
import type { Seen } from './seen.js';
import type { RuleOutline } from './rule-outline.js';

/** What one task's run came to. */
export interface Recorded {
  readonly seen: Seen;
  readonly history: KnownHistory;
}

const NOTHING: readonly never[] = [];

/** The tree of rules, filled in. */
export function ruleFacts(recorded: Recorded, { node, place, parts: outlines }: RuleOutline): RuleFacts {
  const seen = recorded.seen.get(node.id);
  const parts = outlines.length === 0 ? NOTHING : outlines.map((part) => ruleFacts(recorded, part));
  return seen === undefined ? { node, place, entries: NOTHING, missing: NOTHING, parts } : filledIn(recorded, seen, node, place, parts);
}

type Filling = { -readonly [Key in keyof RuleFacts]: RuleFacts[Key] };

// Member by member, and not from parts that are spread: this is most of what an explanation takes.
function filledIn(
  { history }: Recorded,
  seen: Observation,
  node: RuleFacts['node'],
  place: RuleFacts['place'],
  parts: readonly RuleFacts[],
): RuleFacts {
  const { state, truth, since, reachedAt, stood, shares, note, governing, limit, entries } = seen;
  const missing: readonly Missing[] = seen.missing ?? NOTHING;
  const facts: Filling = { node, place, entries, missing, parts };
  if (state !== undefined) facts.state = state;
  if (truth !== undefined) facts.truth = truth;
  if (since !== undefined) facts.since = since;
  if (reachedAt !== undefined) facts.reachedAt = reachedAt;
  if (stood !== undefined) facts.stood = stood;
  if (shares !== undefined) facts.shares = shares;
  if (note !== undefined) facts.note = note;
  if (governing !== undefined) facts.governing = governing;
  if (limit === undefined) return facts;
  facts.limit = limit;
  facts.baseWhen = baseWhen(limit.base);
  facts.readWhen = limit.now === null ? null : firstMoment(history, limit.now.entries);
  return facts;
}

function baseWhen(base: LimitFacts['base']): Moment | null {
  if (base === null) return null;
  if (base.point.on === 'calendar') return { day: base.point.day, minute: null };
  return base.point.on === 'moment' ? base.point.at : base.when;
}

function firstMoment(history: KnownHistory, ids: readonly EntryId[]): Moment | null {
  for (const id of ids) {
    const known = history.get(id);
    if (known !== undefined) return known.tellsOf;
  }
  return null;
}
