/**
 * Tasks as the graph keeps them.
 */
import { clausesOf } from '../check/clauses-of.js';
import { isDefinitionOf, idIn, placed, type Home, type Model } from '../check/model.js';
import { calendarAmountOf } from '../check/quantities/amount.js';
import { rangeOfBand } from '../check/quantities/level.js';
import { newtonMetresOf, suppliedAmount } from '../check/quantities/work.js';
import { sound } from '../check/whole.js';
import type { NodeId, Outcome, RecordKept, Task } from '../graph/rule-graph.js';
import type { DependenceNode, OutcomeNode, ReadsNode, TaskClauseNode, TaskNode } from '../syntax/tree.js';
import { askings, type Asking } from './asked.js';
import { compileCondition, instrumentOf } from './condition.js';
import { compileGrounds, compileSite } from './site.js';
import { compileTrigger } from './trigger.js';
import { delayIn, idOf, meaningOf, originOf, type Workshop } from './workshop.js';

/** All tasks, in the order written, with their nodes added. */
export function compileTasks(shop: Workshop): Task[] {
  const asked = askings(shop);
  const closure = coverClosure(shop.model);
  return placed(shop.model, 'task').map(({ node, home }) =>
    compileTask(shop, home, node, asked.get(idIn(home, node.name.text)) ?? [], closure),
  );
}

/** What follows from a reading or a class. */
export function compileOutcome(shop: Workshop, home: Home, { verdict, text, then }: OutcomeNode): Outcome {
  const asked = then.map(({ task, within }) => ({
    task: idOf(shop, task),
    ...(within === undefined ? {} : { within: delayIn(shop, home, within) }),
  }));
  return { verdict, ...(text === undefined ? {} : { text: text.text }), then: asked };
}

function compileTask(shop: Workshop, home: Home, task: TaskNode, asked: readonly Asking[], covers: (id: string) => string[]): Task {
  const { clauses } = task;
  const id = idIn(home, task.name.text);
  const trigger = compileTrigger(shop, home, task, asked);
  const gate = compileGate(shop, home, clauses, task);
  const stance = compileStance(shop, home, clauses);
  const serial = clausesOf(clauses, 'for-serial')[0];
  // What is undefined is left out when the graph is sealed.
  return {
    id,
    title: task.title.text,
    attachment: home.prefix === '' ? undefined : home.prefix,
    serial: serial && { from: serial.range.from.value, to: serial.range.to.value },
    trigger,
    gate,
    stance,
    site: compileSite(shop, clauses),
    reads: clausesOf(clauses, 'reads').map((clause) => compileReads(shop, home, clause)),
    uses: clausesOf(clauses, 'uses').flatMap((clause) => compileUses(shop, clause)),
    torques: clausesOf(clauses, 'tighten').map(compileTorque),
    covers: covers(id),
    restarts: named(shop, clauses, 'restarts'),
    follows: named(shop, clauses, 'follows'),
    metBy: named(shop, clauses, 'met-by'),
    mends: named(shop, clauses, 'mends'),
    record: compileRecord(clauses),
    ...compileGrounds(clauses),
    origin: originOf(shop, task.at),
  };
}

/** How long its record is kept; the last clause that says so counts. */
function compileRecord(clauses: readonly TaskClauseNode[]): Task['record'] {
  const clause = clausesOf(clauses, 'record').at(-1);
  if (clause === undefined) return undefined;
  const terms = clause.terms.map((term): RecordKept['terms'][number] =>
    term.kind === 'span' ? { is: 'span', span: sound(calendarAmountOf(term)) } : { is: term.kind },
  );
  return { mode: clause.mode ?? 'first', terms };
}

function compileGate(shop: Workshop, home: Home, clauses: readonly TaskClauseNode[], task: TaskNode): NodeId | undefined {
  const parts = clauses.flatMap((clause) => {
    if (clause.kind === 'only-if') return [compileCondition(shop, home, clause.condition)];
    if (clause.kind !== 'unless') return [];
    const part = compileCondition(shop, home, clause.condition);
    return [shop.add({ kind: 'not', part, origin: originOf(shop, clause.at) })];
  });
  return parts.length < 2 ? parts[0] : shop.add({ kind: 'and', parts, origin: originOf(shop, task.at) });
}

function compileStance(shop: Workshop, home: Home, clauses: readonly TaskClauseNode[]): NodeId | undefined {
  const withs = clausesOf(clauses, 'with');
  const parts = withs.map(({ condition }) => compileCondition(shop, home, condition));
  const first = withs[0];
  return first === undefined || parts.length < 2 ? parts[0] : shop.add({ kind: 'and', parts, origin: originOf(shop, first.at) });
}

function compileReads(shop: Workshop, home: Home, { instrument, bands }: ReadsNode): Task['reads'][number] {
  const { definition, ref } = instrumentOf(shop, instrument);
  const rules = bands.map(({ band, outcome, at }) => ({
    range: sound(rangeOfBand(band, definition)),
    outcome: compileOutcome(shop, home, outcome),
    origin: originOf(shop, at),
  }));
  return { instrument: ref, rules };
}

function compileUses(shop: Workshop, { items }: Extract<TaskClauseNode, { kind: 'uses' }>): Task['uses'] {
  return items.map((item) => {
    const supply = meaningOf(shop, item.supply);
    if (!isDefinitionOf(supply, 'supply')) throw new Error(`unchecked: ${item.supply.text} is no supply`);
    return { supply: supply.id, amount: sound(suppliedAmount(item, supply)) };
  });
}

function compileTorque({ what, torque }: Extract<TaskClauseNode, { kind: 'tighten' }>): Task['torques'][number] {
  return { what: what.text, newtonMetres: sound(newtonMetresOf(torque)), written: `${torque.number.text} ${torque.unit.text}` };
}

function named(shop: Workshop, clauses: readonly TaskClauseNode[], kind: DependenceNode['kind']): string[] {
  const ids = clausesOf(clauses, kind).flatMap(({ names }) => names.map((name) => idOf(shop, name)));
  return ids.length < 2 ? ids : [...new Set(ids)];
}

/** What each task covers, and what that covers, and so on. */
function coverClosure(model: Model): (id: string) => string[] {
  const direct = new Map(
    placed(model, 'task').map(({ node, home }) => {
      const names = clausesOf(node.clauses, 'covers').flatMap((clause) => clause.names);
      return [idIn(home, node.name.text), names.flatMap((name) => model.meaning.get(name)?.id ?? [])] as const;
    }),
  );
  return (id) => {
    const own = direct.get(id) ?? [];
    if (own.length === 0) return [];
    const reached = new Set(own);
    for (const next of reached) for (const further of direct.get(next) ?? []) reached.add(further);
    return [...reached];
  };
}
