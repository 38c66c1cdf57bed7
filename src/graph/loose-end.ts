/**
 * Finds what in a graph refers to something that is not there: nodes, names, sources; and what goes round in a circle.
 *
 * For graphs that already have the shape of one: see {@link misfits}.
 */
import { assertNever } from '../base/assert-never.js';
import { circular } from './circular.js';
import { conditionsIn, isTrigger, partsOf, triggersIn } from './node-references.js';
import type { Amount, Instrument, Node, Outcome, RuleGraph, Site, Stance, Task } from './rule-graph.js';

const lists = ['meters', 'gauges', 'dipsticks', 'duties', 'attachments', 'events', 'supplies', 'defects', 'tasks'] as const;

type NameKind = (typeof lists)[number] | 'parts' | 'places';

/** A name and the list in which it has to stand. */
type Name = readonly [kind: NameKind, id: string | undefined];

/**
 * One sentence without its full stop about the first loose end; undefined where there is none.
 *
 * Law: in a graph that passes, each node refers to earlier nodes of the right sort, each name to a thing of the graph, no two things of
 * one sort share an id, and neither covering, restarting, following nor being met by goes round in a circle.
 */
export function looseEnd(graph: RuleGraph): string | undefined {
  return (
    twice(graph) ??
    looseNode(graph) ??
    looseName(graph, namesIn(graph)) ??
    loosePosition(graph) ??
    looseClass(graph) ??
    looseOrigin(graph) ??
    circular(graph)
  );
}

function twice(graph: RuleGraph): string | undefined {
  const all: readonly (readonly [string, readonly { readonly id: string }[]])[] = [
    ...lists.map((kind) => [kind, graph[kind]] as const),
    ['access.parts', graph.access.parts],
    ['access.places', graph.access.places],
    ['access.steps', graph.access.steps],
  ];
  const found = all.find(([, things]) => new Set(things.map(({ id }) => id)).size < things.length);
  return found === undefined ? undefined : `two of its \`${found[0]}\` have the same id`;
}

function looseNode(graph: RuleGraph): string | undefined {
  for (const [index, node] of graph.nodes.entries()) {
    if (node.id !== index) return `\`nodes.${index}\` does not stand at its own id`;
    if (partsOf(node).some((id) => id >= index)) return `\`nodes.${index}\` refers to a node that comes later`;
    if (!fit(graph, triggersIn(node), conditionsIn(node))) return `\`nodes.${index}\` refers to a node of the wrong sort`;
  }
  const { stops, access, tasks } = graph;
  const conditions = [
    ...stops.map(({ condition }) => condition),
    ...access.nevers.map(({ condition }) => condition),
    ...access.steps.flatMap((step) => step.while ?? []),
    ...tasks.flatMap((task) => [...(task.gate === undefined ? [] : [task.gate]), ...(task.stance === undefined ? [] : [task.stance])]),
  ];
  const triggers = tasks.flatMap(({ trigger }) => trigger ?? []);
  return fit(graph, triggers, conditions)
    ? undefined
    : 'a task, step, stop or never-rule refers to a node that is missing or of the wrong sort';
}

function fit({ nodes }: RuleGraph, triggers: readonly number[], conditions: readonly number[]): boolean {
  const sortAt = (id: number): boolean | undefined => {
    const node = nodes[id];
    return node === undefined ? undefined : isTrigger(node);
  };
  return triggers.every((id) => sortAt(id) === true) && conditions.every((id) => sortAt(id) === false);
}

function looseName(graph: RuleGraph, names: readonly Name[]): string | undefined {
  const known = new Map<NameKind, ReadonlySet<string>>([
    ...lists.map((kind) => [kind, new Set(graph[kind].map(({ id }) => id))] as const),
    ['parts', new Set(graph.access.parts.map(({ id }) => id))],
    ['places', new Set(graph.access.places.map(({ id }) => id))],
  ]);
  const loose = names.find(([kind, id]) => id !== undefined && known.get(kind)?.has(id) !== true);
  return loose === undefined ? undefined : `it names something that is not among its \`${loose[0]}\``;
}

function namesIn(graph: RuleGraph): readonly Name[] {
  const { access } = graph;
  return [
    ...graph.nodes.flatMap(namesOfNode),
    ...graph.tasks.flatMap(namesOfTask),
    ...graph.meters.map(({ attachment }): Name => ['attachments', attachment]),
    ...graph.events.flatMap(({ task }): readonly Name[] => (task === undefined ? [] : [['tasks', task]])),
    ...graph.defects.flatMap(({ rules }) => rules.flatMap(({ outcome }) => namesOfOutcome(outcome))),
    ...access.places.map(({ under }): Name => ['parts', under]),
    ...access.walks.flatMap(({ from, to }): readonly Name[] => [
      ['places', from],
      ['places', to],
    ]),
    ...access.steps.flatMap((step): readonly Name[] => [['parts', step.part], ...namesOfSite(step.site)]),
  ];
}

function namesOfTask(task: Task): readonly Name[] {
  return [
    ['attachments', task.attachment],
    ...namesOfSite(task.site),
    ...[...task.covers, ...task.restarts, ...task.follows, ...task.metBy].map((id): Name => ['tasks', id]),
    ...task.mends.map((id): Name => ['defects', id]),
    ...task.uses.map(({ supply }): Name => ['supplies', supply]),
    ...task.reads.flatMap(({ instrument, rules }) => [nameOf(instrument), ...rules.flatMap(({ outcome }) => namesOfOutcome(outcome))]),
  ];
}

function namesOfSite({ place, under }: Site): readonly Name[] {
  return [['places', place], ...under.map(({ part }): Name => ['parts', part])];
}

function namesOfOutcome({ then }: Outcome): readonly Name[] {
  return then.flatMap(({ task, within }): readonly Name[] => [['tasks', task], ...amountNames(within)]);
}

function amountNames(amount: Amount | undefined): readonly Name[] {
  if (amount === undefined || amount.on === 'calendar') return [];
  return amount.on === 'meter' ? [['meters', amount.meter]] : [['duties', amount.duty]];
}

function nameOf({ is, id }: Instrument): Name {
  return [`${is}s`, id];
}

function namesOfNode(node: Node): readonly Name[] {
  switch (node.kind) {
    case 'interval':
    case 'marks':
      return amountNames(node.amount);
    case 'duty-mix':
      return [['meters', node.meter], ...node.duties.map(({ duty }): Name => ['duties', duty])];
    case 'stages':
      return [...node.amounts.flatMap(amountNames), ...(node.from.is === 'event' ? [['events', node.from.event] as const] : [])];
    case 'attaching':
    case 'attachment-is':
      return [['attachments', node.attachment]];
    case 'event':
      return [['events', node.event], ...amountNames(node.within)];
    case 'asked':
      return [node.by.is === 'reading' ? ['tasks', node.by.task] : ['defects', node.by.defect], ...amountNames(node.within)];
    case 'sooner':
      return [['dipsticks', node.dipstick]];
    case 'position-is':
      return [['parts', node.part]];
    case 'defect-is':
      return [['defects', node.defect]];
    case 'duty-is':
      return [['duties', node.duty]];
    case 'unworked':
      return [['tasks', node.task]];
    case 'compare':
    case 'trend':
      return [nameOf(node.instrument)];
    case 'recent':
      return [recentName(node.what), ...amountNames(node.within)];
    case 'first':
    case 'calendar-marks':
    case 'calendar-window':
    case 'whichever':
    case 'any':
    case 'occasion':
    case 'shortly-before':
    case 'refuelling':
    case 'when':
    case 'while':
    case 'and':
    case 'or':
    case 'not':
    case 'age':
    case 'idle':
    case 'at-work':
    case 'season':
      return [];
    default:
      return assertNever(node);
  }
}

function recentName(what: Extract<Node, { readonly kind: 'recent' }>['what']): Name {
  switch (what.is) {
    case 'read':
      return nameOf(what.instrument);
    case 'done':
      return ['tasks', what.task];
    case 'happened':
      return ['events', what.event];
  }
}

function loosePosition({ access, nodes }: RuleGraph): string | undefined {
  const positions = new Map(access.parts.map((part) => [part.id, new Set(part.positions.map(({ name }) => name))]));
  const has = (part: string, position: string): boolean => positions.get(part)?.has(position) === true;
  const stances: readonly Stance[] = [access.rest, access.work ?? {}];
  const whole =
    access.parts.every((part) => part.positions.length > 0 && Object.hasOwn(access.rest, part.id)) &&
    stances.every((stance) => Object.entries(stance).every(([part, position]) => has(part, position))) &&
    access.steps.every(({ part, from, to }) => has(part, from) && has(part, to)) &&
    nodes.every((node) => node.kind !== 'position-is' || has(node.part, node.position));
  return whole ? undefined : 'it names a position that its part does not have, or leaves a part without one';
}

function looseClass({ defects, nodes, tasks }: RuleGraph): string | undefined {
  const classes = new Map(defects.map((defect) => [defect.id, new Set(defect.classes.map(({ name }) => name))]));
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const has = (defect: string, name: string | undefined): boolean => name === undefined || classes.get(defect)?.has(name) === true;
  const whole =
    defects.every(({ id, rules }) => rules.every((rule) => has(id, rule.class))) &&
    nodes.every((node) => {
      if (node.kind === 'defect-is') return has(node.defect, node.class) && has(node.defect, node.worseThan);
      if (node.kind !== 'asked') return true;
      const { by } = node;
      return by.is === 'defect' ? has(by.defect, by.class) : byId.get(by.task)?.reads[by.reads]?.rules[by.rule] !== undefined;
    });
  return whole ? undefined : 'it names a class that its defect does not have, or a reading that its task does not take';
}

function looseOrigin(graph: RuleGraph): string | undefined {
  const { sources, stops, access, nodes } = graph;
  const things = [...lists.flatMap((kind): readonly { readonly origin: { readonly source: number } }[] => graph[kind]), ...stops, ...nodes];
  const inner = [
    ...[...access.parts, ...access.places, ...access.steps, ...access.nevers].map(({ origin }) => origin),
    ...graph.defects.flatMap(({ rules }) => rules.map(({ origin }) => origin)),
    ...graph.tasks.flatMap(({ reads }) => reads.flatMap(({ rules }) => rules.map(({ origin }) => origin))),
  ];
  const whole = [...things.map(({ origin }) => origin), ...inner].every(({ source }) => source < sources.length);
  return whole ? undefined : 'it says that something was written in a source that it does not have';
}
