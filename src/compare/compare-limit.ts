/** Two limits on one axis, of two editions: what became tighter, looser, or counts from elsewhere. */
import { daysBeyond } from '../graph/calendar-amount.js';
import { meaningText } from '../graph/meaning-fingerprint.js';
import type { Amount, RuleGraph, Trigger } from '../graph/rule-graph.js';
import type { Aspect, Bearing, TaskChange } from './comparison.js';

/** Lengths are compared in days, a month as 30.4375 of them; only their order matters. */
const daysAMonth = 30.4375;

/** The changes from one limit to its counterpart. */
export function compareLimit(
  before: Trigger,
  after: Trigger,
  graphs: { readonly before: RuleGraph; readonly after: RuleGraph },
): readonly TaskChange[] {
  if (meaningText(before, graphs.before.nodes) === meaningText(after, graphs.after.nodes)) return [];
  const words = { before: { text: before.origin.text, origin: before.origin }, after: { text: after.origin.text, origin: after.origin } };
  const change = (what: Aspect, bearing: Bearing | null): readonly TaskChange[] => (bearing === null ? [] : [{ what, bearing, ...words }]);
  const found = [
    ...change('interval', byLength(before, after)),
    ...change('late allowance', bySize(margin(before, 'late'), margin(after, 'late'))),
    ...change('early allowance', bySize(margin(before, 'early'), margin(after, 'early'))),
    ...change('lead', sameLead(before, after) ? null : 'different'),
    ...change('hard stop', byStop(before, after)),
    ...change('counting', counting(before) === counting(after) ? null : 're-anchored'),
  ];
  return found.length > 0 ? found : change('timing', 'different');
}

/** The larger, the looser. */
function bySize(before: number | null, after: number | null): Bearing | null {
  if (before === after) return null;
  if (before === null || after === null) return 'different';
  return after > before ? 'looser' : 'tighter';
}

function byLength(before: Trigger, after: Trigger): Bearing | null {
  const [from, to] = [lengthsOf(before), lengthsOf(after)];
  if (from.length !== to.length)
    return from.length === 0 && to.length === 0 ? null : before.kind === after.kind ? 'different' : kindBearing(before, after);
  const bearings = new Set(from.map((length, i) => bySize(length, to[i] ?? null)).filter((bearing) => bearing !== null));
  if (bearings.size > 1) return 'different';
  const [only] = bearings;
  return only ?? (before.kind === after.kind ? null : kindBearing(before, after));
}

/** An hour interval that gains a duty asks for more; one that loses it asks for less. */
function kindBearing(before: Trigger, after: Trigger): Bearing {
  if (before.kind === 'interval' && after.kind === 'duty-mix') return 'tighter';
  return before.kind === 'duty-mix' && after.kind === 'interval' ? 'looser' : 'different';
}

function lengthsOf(node: Trigger): readonly number[] {
  switch (node.kind) {
    case 'interval':
    case 'marks':
      return [lengthOf(node.amount)];
    case 'duty-mix':
      return [node.ticks, ...node.duties.map((duty) => duty.ticks)];
    case 'stages':
      return node.amounts.map(lengthOf);
    case 'event':
    case 'asked':
      if (node.kind === 'event' && node.happenings !== undefined) return [node.happenings];
      return [node.within === undefined ? 0 : lengthOf(node.within)];
    case 'sooner':
      return [node.share];
    case 'shortly-before':
      return [node.withinMinutes];
    default:
      return [];
  }
}

function lengthOf(amount: Amount): number {
  if (amount.on !== 'calendar') return amount.ticks;
  const days = { minutes: 1 / 1440, days: 1, months: daysAMonth, 'calendar-months': daysAMonth } as const;
  return amount.count * days[amount.unit] + daysBeyond(amount);
}

function margin(node: Trigger, side: 'early' | 'late' | 'lead'): number | null {
  return side in node
    ? (node as { readonly early: { size: number }; readonly late: { size: number }; readonly lead: { size: number } })[side].size
    : null;
}

/** A lead that is the same share of the interval follows from the interval and is no change of its own. */
function sameLead(before: Trigger, after: Trigger): boolean {
  const [from, to] = [margin(before, 'lead'), margin(after, 'lead')];
  if (from === to || from === null || to === null) return from === to;
  const share = (lead: number, [length]: readonly number[]): number => (length === undefined || length === 0 ? lead : lead / length);
  return Math.abs(share(from, lengthsOf(before)) - share(to, lengthsOf(after))) < 0.015;
}

function counting(node: Trigger): string | null {
  return 'count' in node ? node.count : null;
}

function byStop(before: Trigger, after: Trigger): Bearing | null {
  const [from, to] = [stopOf(before), stopOf(after)];
  if (from === to) return null;
  if (from === null) return 'tighter';
  return to === null ? 'looser' : bySize(from, to);
}

function stopOf(node: Trigger): number | null {
  return 'hold' in node && node.hold !== undefined ? node.hold.after.size : null;
}
