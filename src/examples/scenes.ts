/**
 * Histories that may bring a part of the rules about, the likeliest first; which of them does, running them tells.
 */
import { partsOf } from '../graph/node-references.js';
import type { Amount, Node, NodeId, RuleGraph, Task } from '../graph/rule-graph.js';
import { dayNumber } from '../values/civil.js';
import type { Day } from '../values/moment.js';
import { valueIn } from './level.js';
import type { Wanted } from './look-for.js';
import type { CoverageOutcome } from './report.js';
import { later, type Scene, type SceneLine } from './scene.js';
import { reads, settingFor, type Setting } from './setting.js';

const firstDay: Day = dayNumber({ year: 2026, month: 3, day: 2 });
const noon = 720;

/** Scenes for one outcome of one part. A limit's scenes end where it begins to count: whoever runs them goes on to its due point. */
export function scenesFor(graph: RuleGraph, wanted: Wanted, outcome: CoverageOutcome): readonly Scene[] {
  const { sign } = wanted;
  switch (sign.is) {
    case 'band': {
      const each = graph.tasks.find(({ id }) => id === sign.task)?.reads[sign.reads];
      const rule = each?.rules[sign.rule];
      return each === undefined || rule === undefined ? [] : [[line(0, reads(graph, each.instrument, valueIn(rule.range)))]];
    }
    case 'class':
      return [[line(0, `opens ${sign.defect} ${sign.class}`)]];
    case 'node': {
      const node = graph.nodes[sign.node];
      const task = graph.tasks.find(({ id }) => id === sign.task);
      if (node === undefined) return [];
      if (wanted.kind === 'condition') return conditionScenes(graph, task, node, outcome);
      return task === undefined ? [] : triggerScenes(graph, task, node);
    }
  }
}

function line(days: number, ...acts: readonly string[]): SceneLine {
  return { day: later(firstDay, days), acts };
}

function conditionScenes(graph: RuleGraph, task: Task | undefined, node: Node, outcome: CoverageOutcome): readonly Scene[] {
  if (outcome === 'unknown') return [[line(0)], [line(0, 'plans outing 2 h')], [line(0, 'outing 1 h')]];
  const setting = settingFor(graph, node.id, outcome === 'true');
  const plain = withSetting([line(0)], setting);
  // A trend is looked for in the outing during which it was read.
  return [
    plain,
    withSetting([{ ...line(0, 'outing 10:00 to 14:00'), minute: noon }], setting),
    withSetting([line(0, 'plans outing 2 h')], setting),
    // What is told last of a position counts: a gate may want one that is neither this nor the first of the others.
    ...(task === undefined ? [] : settingsOf(graph, task, node.id).map((each) => withSetting(plain, each))),
  ];
}

/** The last line of a scene in a setting. */
function withSetting(scene: Scene, { now, earlier, season }: Setting): Scene {
  const last = scene.at(-1);
  if (last === undefined) return scene;
  const day = season === undefined ? last.day : dayNumber({ year: 2026, ...season });
  const minute = earlier.some(({ minutes }) => minutes !== undefined) ? (last.minute ?? noon) : last.minute;
  const before = earlier.map(({ minutes, days = 0, acts }): SceneLine => ({
    day: later(day, -days),
    ...(minutes === undefined ? {} : { minute: noon - minutes }),
    acts,
  }));
  return [...scene.slice(0, -1), ...before, { ...last, day, ...(minute === undefined ? {} : { minute }), acts: [...last.acts, ...now] }];
}

function triggerScenes(graph: RuleGraph, task: Task, node: Node): readonly Scene[] {
  const meters = metersOf(graph, task).map(({ id, unit }) => `${id} 100 ${unit}`);
  const born = metersOf(graph, task).map(({ id, unit }) => `${id} 0 ${unit}`);
  const old = metersOf(graph, task).map(({ id, unit }) => `${id} 1000 ${unit}`);
  const done = line(0, ...meters, `done ${task.id}`);
  const begun = line(0, ...born, 'enters service');
  const asks = happeningFor(graph, node);
  const scenes: readonly Scene[] =
    asks.length > 0
      ? asks.flatMap((acts) => [[line(0, ...acts)], [done, line(1, ...acts)]])
      : [[done], [begun], [begun, line(120, ...old, `done ${task.id}`)], ...levelScenes(graph, task, node)];
  const settings = settingsOf(graph, task, node.id);
  // Of a position what is told last counts, so that each of two settings that speak of one may have to come last.
  const orders = settings.length < 2 ? [settings] : [settings, [...settings].reverse()];
  return orders.flatMap((order) => scenes.map((scene) => order.reduce((sum, each) => withPersistent(sum, each), scene)));
}

/** What sets an occasion, an event or an asking off. */
function happeningFor(graph: RuleGraph, node: Node): readonly (readonly string[])[] {
  switch (node.kind) {
    case 'occasion':
      if (node.of === 'storage') return node.when === 'before' ? [['storage begins']] : [['storage begins', 'storage ends']];
      return node.when === 'after' ? [['outing 2 h']] : [['plans outing 2 h']];
    case 'shortly-before':
      return [['plans outing 2 h']];
    case 'attaching':
      return [[`attached ${node.attachment}`]];
    case 'refuelling':
      return [['refuelled']];
    case 'event':
      return [Array.from({ length: node.happenings ?? 1 }, () => happens(graph, node.event))];
    case 'stages':
      return node.from.is === 'event' ? [[happens(graph, node.from.event)]] : [];
    case 'asked': {
      const { by } = node;
      if (by.is === 'defect') return [[`opens ${by.defect} ${by.class}`]];
      const each = graph.tasks.find(({ id }) => id === by.task)?.reads[by.reads];
      const rule = each?.rules[by.rule];
      return each === undefined || rule === undefined ? [] : [[reads(graph, each.instrument, valueIn(rule.range))]];
    }
    default:
      return [];
  }
}

/** What has an event happen: it is told, or the task is done whose doing it is. */
function happens(graph: RuleGraph, event: string): string {
  const task = graph.events.find(({ id }) => id === event)?.task;
  return task === undefined ? `happens ${event}` : `done ${task}`;
}

/** Levels that fall, for a limit that goes by them. */
function levelScenes(graph: RuleGraph, task: Task, node: Node): readonly Scene[] {
  const meter = graph.meters.find(({ unit, fromOutings }) => unit === 'h' && !fromOutings);
  if (node.kind !== 'sooner' || meter === undefined) return [];
  const level = (days: number, at: number, value: number): SceneLine =>
    line(days, `${meter.id} ${at} h`, `${node.dipstick} reads ${value}`);
  return [
    [
      level(0, 100, 1),
      level(2, 110, 0.9),
      level(4, 120, 0.8),
      { ...level(6, 130, 0.7), acts: [...level(6, 130, 0.7).acts, `done ${task.id}`] },
    ],
  ];
}

/** What has to hold for a node of a task to be looked at: its gate, and each `while` above it. */
function settingsOf(graph: RuleGraph, task: Task, id: NodeId): readonly Setting[] {
  const gate = task.gate === undefined ? [] : [settingFor(graph, task.gate, true)];
  return [...gate, ...whiles(graph, task.trigger, id)];
}

function whiles(graph: RuleGraph, from: NodeId | undefined, to: NodeId): readonly Setting[] {
  const node = from === undefined ? undefined : graph.nodes[from];
  if (node === undefined || node.id === to) return [];
  const below = partsOf(node).find((part) => holds(graph, part, to));
  const rest = below === undefined ? [] : whiles(graph, below, to);
  return node.kind === 'while' ? [settingFor(graph, node.condition, true), ...rest] : rest;
}

function holds(graph: RuleGraph, from: NodeId, to: NodeId): boolean {
  const node = graph.nodes[from];
  return from === to || (node !== undefined && partsOf(node).some((part) => holds(graph, part, to)));
}

/** A setting that lasts is told on the first line; work that is to be in a duty takes the place of plain work on the last. */
function withPersistent(scene: Scene, { now, earlier }: Setting): Scene {
  const lasting = now.filter((act) => !act.startsWith(planned));
  const [duty] = now.filter((act) => act.startsWith(planned)).map((act) => act.slice(planned.length));
  const before = earlier.filter(({ minutes }) => minutes === undefined).map(({ days = 0, acts }): SceneLine => line(-days, ...acts));
  const told = scene.map((each, index) => {
    const acts = [...(index === 0 ? lasting : []), ...each.acts];
    return { ...each, acts: duty === undefined || index < scene.length - 1 ? acts : inDuty(acts, duty) };
  });
  return [...before, ...told];
}

const planned = 'plans outing 2 h';

function inDuty(acts: readonly string[], duty: string): readonly string[] {
  const plain = acts.findIndex((act) => act.endsWith('outing 2 h'));
  return plain < 0 ? [...acts, `${planned}${duty}`] : acts.map((act, index) => (index === plain ? `${act}${duty}` : act));
}

/** The meters that a task's limits count on; those that add outings up are not read. */
function metersOf(graph: RuleGraph, task: Task): RuleGraph['meters'] {
  const named = new Set<string>();
  const visit = (id: NodeId | undefined): void => {
    const node = id === undefined ? undefined : graph.nodes[id];
    if (node === undefined) return;
    for (const meter of namedIn(node)) named.add(meter);
    partsOf(node).forEach(visit);
  };
  visit(task.trigger);
  return graph.meters.filter(({ id, fromOutings }) => named.has(id) && !fromOutings);
}

function namedIn(node: Node): readonly string[] {
  const of = (amounts: readonly (Amount | undefined)[]): readonly string[] =>
    amounts.flatMap((amount) => (amount?.on === 'meter' ? [amount.meter] : []));
  switch (node.kind) {
    case 'interval':
    case 'marks':
      return of([node.amount]);
    case 'duty-mix':
      return [node.meter];
    case 'stages':
      return of(node.amounts);
    case 'event':
    case 'asked':
      return of([node.within]);
    default:
      return [];
  }
}
