/** What each task of a schedule depends on, read off its rules once: what is not touched need not be worked out anew. */
import { indexGraph } from '../assess/graph-index.js';
import { linksOf } from '../assess/linked-doings.js';
import type { GraphIndex } from '../assess/world.js';
import { assertNever } from '../base/assert-never.js';
import type { Amount, Instrument, Node, NodeId, RecentNode, RuleGraph, Task } from '../graph/rule-graph.js';
import type { AssessOptions } from '../assess/assessment.js';
import { type Facet, facet, MACHINE, NOW, OUTINGS, REFUELLINGS, STORAGE, TOP_UPS } from './facet.js';

export interface Dependencies {
  /** In the order of the schedule's tasks. */
  readonly tasks: readonly ReadonlySet<Facet>[];
  /** Of all declared stops together. */
  readonly stops: ReadonlySet<Facet>;
}

/** The facets that each task, and the stops, depend on under these options. */
export function dependenciesOf(graph: RuleGraph, options: AssessOptions): Dependencies {
  const index = indexGraph(graph);
  const tasks = graph.tasks.map((task) => {
    const found = new Gatherer(index, options);
    found.task(task);
    return found.facets;
  });
  const stops = new Gatherer(index, options);
  for (const stop of graph.stops) stops.node(stop.condition);
  return { tasks, stops: stops.facets };
}

class Gatherer {
  readonly facets = new Set<Facet>([MACHINE]);

  constructor(
    private readonly index: GraphIndex,
    private readonly options: AssessOptions,
  ) {}

  task(task: Task): void {
    this.doings(task.id);
    if (task.attachment !== undefined) this.attachment(task.attachment);
    for (const id of [task.gate, task.trigger]) if (id !== undefined) this.node(id);
    for (const { instrument } of task.reads) this.instrument(instrument);
  }

  node(id: NodeId): void {
    const node = this.index.graph.nodes[id];
    if (node !== undefined) this.visit(node);
  }

  private visit(node: Node): void {
    switch (node.kind) {
      case 'interval':
        if (node.standstill !== undefined) this.add(STORAGE, NOW);
        return this.amount(node.amount);
      case 'marks':
        return this.amount(node.amount);
      case 'stages':
        node.amounts.forEach((amount) => this.amount(amount));
        return node.from.is === 'event' ? this.event(node.from.event) : undefined;
      case 'duty-mix':
        // Of an outing that is under way, what belongs to a limit grows with the time.
        return this.add(facet('meter', node.meter), OUTINGS, NOW);
      case 'first':
        return [node.first, ...(node.then === undefined ? [] : [node.then])].forEach((part) => this.node(part));
      case 'whichever':
      case 'any':
        // Forecasts are days from now on.
        if (this.options.rates !== undefined) this.add(NOW);
        return node.parts.forEach((part) => this.node(part));
      case 'calendar-marks':
      case 'calendar-window':
      case 'season':
      case 'age':
        return this.add(NOW);
      case 'occasion':
        return this.add(OUTINGS, STORAGE, NOW);
      case 'shortly-before':
        return this.add(OUTINGS, NOW);
      case 'attaching':
        return this.attachment(node.attachment);
      case 'refuelling':
        return this.add(REFUELLINGS);
      case 'event':
        this.event(node.event);
        return node.within === undefined ? undefined : this.amount(node.within);
      case 'when':
        return this.node(node.condition);
      case 'while':
        return [node.condition, node.then].forEach((part) => this.node(part));
      case 'asked':
        if (node.by.is === 'defect') this.add(facet('defect', node.by.defect));
        else this.asker(node.by.task, node.by.reads);
        return node.within === undefined ? undefined : this.amount(node.within);
      case 'sooner':
        this.add(facet('instrument', node.dipstick), TOP_UPS);
        return this.index.graph.meters.forEach(({ id }) => this.add(facet('meter', id)));
      case 'and':
      case 'or':
        return node.parts.forEach((part) => this.node(part));
      case 'not':
        return this.node(node.part);
      case 'position-is':
        return this.add(facet('position', node.part));
      case 'attachment-is':
        return this.attachment(node.attachment);
      case 'defect-is':
        return this.add(facet('defect', node.defect));
      case 'unworked':
        this.doings(node.task);
        return this.add(OUTINGS, NOW);
      case 'at-work':
      case 'duty-is':
      case 'idle':
        return this.add(OUTINGS, NOW);
      case 'compare':
        return this.instrument(node.instrument);
      case 'trend':
        this.add(OUTINGS);
        return this.instrument(node.instrument);
      case 'recent':
        this.recent(node.what);
        return node.within === undefined ? undefined : this.amount(node.within);
      default:
        return assertNever(node);
    }
  }

  private add(...facets: readonly Facet[]): void {
    for (const each of facets) this.facets.add(each);
  }

  private amount(amount: Amount): void {
    if (amount.on === 'meter') this.add(facet('meter', amount.meter));
    else this.add(...(amount.on === 'work' ? [OUTINGS, NOW] : [NOW]));
  }

  private instrument({ is, id }: Instrument): void {
    if (is === 'meter') return this.add(facet('meter', id));
    const fresh = is === 'gauge' ? this.index.gauges.get(id)?.freshFor : this.index.dipsticks.get(id)?.freshFor;
    this.add(facet('instrument', id), ...(fresh === undefined ? [] : [NOW]));
  }

  /** An attachment that the intended outing names counts as put on now. */
  private attachment(id: string): void {
    const intended = this.options.intent?.outing?.attachments?.includes(id) === true;
    this.add(facet('attachment', id), ...(intended ? [NOW] : []));
  }

  private asker(task: string, reads: number): void {
    const instrument = this.index.tasks.get(task)?.reads[reads]?.instrument;
    if (instrument !== undefined) this.instrument(instrument);
  }

  private recent(what: RecentNode['what']): void {
    switch (what.is) {
      case 'read':
        return this.instrument(what.instrument);
      case 'done':
        return this.doings(what.task);
      case 'happened':
        return this.event(what.event);
      default:
        return assertNever(what);
    }
  }

  /** One that is the doing of a task is noted as that. */
  private event(id: string): void {
    const { task, on } = this.index.events.get(id) ?? {};
    if (task !== undefined) this.doings(task);
    else this.add(...(on === undefined ? [facet('event', id)] : [NOW]));
  }

  /** The doings of a task are its own, those of tasks that cover it, of its parts, and of tasks that restart it. */
  private doings(task: string, seen: Set<string> = new Set<string>()): void {
    if (seen.has(task)) return;
    seen.add(task);
    this.add(facet('doing', task));
    const { graph, tasks } = this.index;
    const { coveredBy, restartedBy } = linksOf(graph);
    for (const other of [...(coveredBy.get(task) ?? []), ...(restartedBy.get(task) ?? []), ...(tasks.get(task)?.metBy ?? [])])
      this.doings(other, seen);
  }
}
