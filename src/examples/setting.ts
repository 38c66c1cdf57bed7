/**
 * What has to be told for a condition to come to true or to false.
 */
import { assertNever } from '../base/assert-never.js';
import type { CalendarAmount, Condition, Instrument, NodeId, Range, RuleGraph } from '../graph/rule-graph.js';
import { numberText } from '../values/number-text.js';
import { unitsOf } from '../values/ticks.js';
import { valueIn } from './level.js';

/** Acts on the line itself, and before it: so many minutes, or so many days, earlier. */
export interface Setting {
  readonly now: readonly string[];
  readonly earlier: readonly { readonly minutes?: number; readonly days?: number; readonly acts: readonly string[] }[];
  /** The day of the year that it has to be. */
  readonly season?: { readonly month: number; readonly day: number };
}

const nothing: Setting = { now: [], earlier: [] };

/** The setting for a condition; the first way that there is. */
export function settingFor(graph: RuleGraph, id: NodeId, wanted: boolean): Setting {
  const node = graph.nodes[id] as Condition | undefined;
  if (node === undefined) return nothing;
  switch (node.kind) {
    case 'and':
    case 'or':
      return joined(graph, node.parts, wanted, (node.kind === 'and') === wanted);
    case 'not':
      return settingFor(graph, node.part, !wanted);
    case 'position-is': {
      const other = graph.access.parts.find((part) => part.id === node.part)?.positions.find(({ name }) => name !== node.position)?.name;
      return wanted ? now(`stands ${node.part} ${node.position}`) : now(...(other === undefined ? [] : [`stands ${node.part} ${other}`]));
    }
    case 'attachment-is':
      return node.on === wanted ? now(`attached ${node.attachment}`) : nothing;
    case 'defect-is':
      return node.open === wanted ? now(`opens ${node.defect}${classFor(graph, node)}`) : nothing;
    case 'duty-is':
      return wanted ? now(`plans outing 2 h in ${node.duty}`) : nothing;
    case 'compare':
      return now(reads(graph, node.instrument, wanted ? valueIn(node.range) : outside(node.range)));
    case 'trend': {
      const by = node.direction === 'climbs' ? node.by : -node.by;
      const acts = [reads(graph, node.instrument, 100 + (wanted ? by : 0))];
      return {
        now: acts,
        earlier: [{ minutes: Math.max(1, Math.floor(node.withinMinutes / 2)), acts: [reads(graph, node.instrument, 100)] }],
      };
    }
    case 'recent':
      return wanted ? oftenEnough(recently(graph, node.what), node.times ?? 1) : nothing;
    case 'age':
      return { now: [], earlier: [{ days: wanted ? daysIn(node.span) + 2 : 1, acts: ['enters service'] }] };
    case 'idle':
      return { now: [], earlier: [{ days: wanted ? daysIn(node.span) + 2 : 1, acts: ['outing 1 h'] }] };
    case 'unworked':
      return wanted ? now(`done ${node.task}`) : { now: ['outing 1 h'], earlier: [{ days: 1, acts: [`done ${node.task}`] }] };
    case 'at-work':
      return wanted ? now('outing') : nothing;
    case 'season':
      return { ...nothing, season: wanted ? node.from : outOfSeason(node) };
    default:
      return assertNever(node);
  }
}

/** All parts so, or the first that can be told alone. */
function joined(graph: RuleGraph, parts: readonly NodeId[], wanted: boolean, all: boolean): Setting {
  const settings = parts.map((part) => settingFor(graph, part, wanted));
  return (all ? settings : settings.slice(0, 1)).reduce(
    (sum, each) => ({ ...sum, ...each, now: [...new Set([...sum.now, ...each.now])], earlier: [...sum.earlier, ...each.earlier] }),
    nothing,
  );
}

/** An act so many times: once now, the others on the days before. */
function oftenEnough(act: string, times: number): Setting {
  return { now: [act], earlier: Array.from({ length: times - 1 }, (_, index) => ({ days: index + 1, acts: [act] })) };
}

function now(...acts: readonly string[]): Setting {
  return { now: acts, earlier: [] };
}

/** What a gauge, dipstick or meter reads, as an act. */
export function reads(graph: RuleGraph, { is, id }: Instrument, value: number): string {
  if (is === 'meter') return `${id} ${numberText(unitsOf(value))} ${graph.meters.find((meter) => meter.id === id)?.unit ?? 'h'}`;
  const unit = is === 'gauge' ? ` ${graph.gauges.find((gauge) => gauge.id === id)?.unit ?? ''}` : '';
  return `${id} reads ${numberText(value, 6)}${unit}`;
}

function outside({ from, to }: Range): number {
  if (from !== undefined) return from - 1;
  return to === undefined ? 0 : to + 1;
}

function classFor(graph: RuleGraph, node: Extract<Condition, { kind: 'defect-is' }>): string {
  const classes = graph.defects.find(({ id }) => id === node.defect)?.classes ?? [];
  const after = classes.findIndex(({ name }) => name === node.worseThan) + 1;
  const name = node.class ?? classes[node.worseThan === undefined ? 0 : after]?.name;
  return name === undefined ? '' : ` ${name}`;
}

function recently(graph: RuleGraph, what: Extract<Condition, { kind: 'recent' }>['what']): string {
  switch (what.is) {
    case 'done':
      return `done ${what.task}`;
    case 'happened':
      return `happens ${what.event}`;
    case 'read':
      return reads(graph, what.instrument, 1);
    default:
      return assertNever(what);
  }
}

/** At least as many days as a span has. */
function daysIn({ unit, count, period, plus = 0 }: CalendarAmount): number {
  switch (unit) {
    case 'minutes':
      return Math.ceil(count / 1440);
    case 'days':
      return count;
    case 'months':
      return count * 31 + plus;
    case 'calendar-months':
      return (count + (period ?? 1)) * 31 + plus;
    default:
      return assertNever(unit);
  }
}

/** The day after the last. */
function outOfSeason({ to }: { readonly to: { readonly month: number; readonly day: number } }): { month: number; day: number } {
  return to.day < 28 ? { month: to.month, day: to.day + 1 } : { month: (to.month % 12) + 1, day: 2 };
}
