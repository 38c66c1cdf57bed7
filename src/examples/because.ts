/**
 * Whether the part of the rules that decided is the one that an example's `because` names: told by kind and amount, not by words.
 */
import type { Observation } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import type { Home } from '../check/model.js';
import { compileByWeek } from '../compile/by-week.js';
import { compileCondition } from '../compile/condition.js';
import { noMargins } from '../compile/margins.js';
import { compileOccasion } from '../compile/occasion.js';
import { compilePlan } from '../compile/plan.js';
import { amountIn, workshop, type Workshop } from '../compile/workshop.js';
import { meaningText } from '../graph/meaning-fingerprint.js';
import type { Amount, AskedNode, EventNode, Node, RuleGraph, Trigger } from '../graph/rule-graph.js';
import type { BecauseNode } from '../syntax/tree.js';
import type { Bench } from './bench.js';

/** True if `node`, which governs a task, is what the author's reason names. */
export function isBecause(bench: Bench, home: Home, because: BecauseNode, node: Trigger, seen: Observation | undefined): boolean {
  const shop = workshop(bench.model, bench.sources, compileByWeek);
  switch (because.kind) {
    case 'because-limit': {
      if (because.limit.kind === 'multiple' && amountIn(shop, home, because.limit.span).on !== 'meter') return false;
      const named = compilePlan(shop, because.limit, {
        home,
        terms: { count: 'doing', early: [], late: [], lead: [], holds: [] },
        duties: [],
      });
      return isLimit(shop.nodes[named], node, seen);
    }
    case 'because-occasion': {
      const named = compileOccasion(
        shop,
        home,
        { kind: 'occasion', at: because.at, what: because.what },
        { count: 'doing', early: [], late: [], lead: [], holds: [] },
      );
      return isOccasion(shop.nodes[named], node);
    }
    case 'because-when':
      return node.kind === 'when' && isCondition(shop, compileCondition(shop, home, because.condition), bench.graph, node.condition);
    case 'because-name':
      return isNamed(bench.meaning(because.name)?.id ?? because.name.text, node, bench.graph);
    default:
      return assertNever(because);
  }
}

function isLimit(named: Node | undefined, node: Trigger, seen: Observation | undefined): boolean {
  switch (named?.kind) {
    case 'interval':
      return (node.kind !== 'interval' || node.doings === named.doings) && hasAmount(named.amount, named.strict, node, seen);
    case 'marks':
      return node.kind === 'marks' && sameAmount(named.amount, node.amount);
    case 'calendar-marks':
    case 'calendar-window':
      return sameRule(named, node);
    default:
      return false;
  }
}

/** The same timing, whatever its margins and its place in the file. */
function sameRule(named: Node, node: Node): boolean {
  const bare = (each: Node): string => meaningText({ ...each, ...noMargins, hold: undefined }, []);
  return named.kind === node.kind && bare(named) === bare(node);
}

function hasAmount(amount: Amount, strict: boolean, node: Trigger, seen: Observation | undefined): boolean {
  switch (node.kind) {
    case 'interval':
      return node.strict === strict && sameAmount(amount, node.amount);
    case 'duty-mix':
      return (
        amount.on === 'meter' &&
        amount.meter === node.meter &&
        [node.ticks, ...node.duties.map(({ ticks }) => ticks)].includes(amount.ticks)
      );
    case 'stages':
      return node.amounts.some((each: Amount) => sameAmount(amount, each) && isStageThatDecides(each, seen));
    case 'event':
    case 'asked':
      return node.within !== undefined && sameAmount(amount, node.within);
    default:
      return false;
  }
}

/** Of a list of stages the one that the due point comes from; stages of months have no length to tell that by. */
function isStageThatDecides(amount: Amount, seen: Observation | undefined): boolean {
  const span = seen?.limit?.span ?? null;
  return amount.on === 'calendar' || span === null || span === amount.ticks;
}

function sameAmount(a: Amount, b: Amount): boolean {
  return meaningText(a, []) === meaningText(b, []);
}

function isOccasion(named: Node | undefined, node: Trigger): boolean {
  switch (named?.kind) {
    case 'occasion':
      return node.kind === 'occasion' && node.when === named.when && node.of === named.of;
    case 'shortly-before':
      return node.kind === 'shortly-before' && node.of === named.of && node.withinMinutes === named.withinMinutes;
    case 'attaching':
      return node.kind === 'attaching' && node.attachment === named.attachment;
    case 'event':
      return isEvent(named, node) || (named.within === undefined && isAfterEvent(named.event, node));
    case 'refuelling':
      return node.kind === 'refuelling';
    default:
      return false;
  }
}

/** The event alone names each rule that waits for it; with a span, the one that gives that long. */
function isEvent(named: EventNode, node: Trigger): boolean {
  if (node.kind !== 'event' || node.event !== named.event) return false;
  if (named.happenings !== undefined) return node.happenings === named.happenings;
  return named.within === undefined || (node.within !== undefined && sameAmount(named.within, node.within));
}

function isAfterEvent(event: string, node: Trigger): boolean {
  return node.kind === 'stages' && node.from.is === 'event' && node.from.event === event;
}

function isCondition(shop: Workshop, named: number, graph: RuleGraph, condition: number): boolean {
  return meaningText(named, shop.nodes, 'condition') === meaningText(condition, graph.nodes, 'condition');
}

/** A name alone: of what asked for the task, of the event that it follows, of the duty that shortens it, of the dipstick that does. */
function isNamed(id: string, node: Trigger, graph: RuleGraph): boolean {
  switch (node.kind) {
    case 'asked':
      return asks(graph, node, id);
    case 'event':
      return node.event === id;
    case 'stages':
      return isAfterEvent(id, node);
    case 'duty-mix':
      return node.duties.some(({ duty }) => duty === id);
    case 'interval':
      return node.amount.on === 'work' && node.amount.duty === id;
    case 'sooner':
      return node.dipstick === id;
    default:
      return false;
  }
}

function asks(graph: RuleGraph, { by }: AskedNode, id: string): boolean {
  if (by.is === 'defect') return by.defect === id;
  return by.task === id || graph.tasks.find((task) => task.id === by.task)?.reads[by.reads]?.instrument.id === id;
}
