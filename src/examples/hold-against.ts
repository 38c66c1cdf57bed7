/**
 * One expectation of a worked example, held against an assessment.
 */
import type { Assessment, DuePoint, TaskAssessment } from '../assess/assessment.js';
import { comesFirst } from '../assess/verdict.js';
import type { Home } from '../check/model.js';
import { ticksIn } from '../check/quantities/units.js';
import { explain } from '../explain/explain.js';
import { placeOf } from '../explain/rule-outline.js';
import type { Trigger } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import type { ExpectNode, PointNode } from '../syntax/tree.js';
import { dayOf } from '../values/civil.js';
import { findUnit } from '../values/units.js';
import { isBecause } from './because.js';
import { placeAt, type Bench } from './bench.js';
import type { Asserted, ExpectedMachine, ExpectedTask, Expectation } from './report.js';

type ExpectTask = Extract<ExpectNode, { kind: 'expect-task' }>;

/** Whether an expectation holds, and what was found. */
export function holdAgainst(bench: Bench, home: Home, assessment: Assessment, entries: readonly Entry[], expect: ExpectNode): Expectation {
  const common = { place: placeAt(bench, expect.at), when: assessment.now };
  if (expect.kind === 'expect-machine') {
    const { verdict: actual, holds } = assessment;
    const expected = expect.verdict.text;
    const asks = actual === expected || actual !== 'work-due-first' ? {} : { due: workDue(assessment) };
    return { ...common, holds: actual === expected, about: { kind: 'machine', expected, actual, holds, ...asks } };
  }
  const id = bench.meaning(expect.task)?.id ?? expect.task.text;
  const task = assessment.tasks.find((each) => each.task === id);
  if (task === undefined) throw new Error(`unchecked: an example expects something of \`${id}\`, which is no task`);
  const failed = failures(bench, home, assessment, task, expect);
  const about: ExpectedTask = {
    kind: 'task',
    task: id,
    expected: expectedOf(bench, expect),
    actual: { state: task.state, due: task.due, governing: governingOf(bench, task), missing: task.missing },
    failed,
    ...(failed.length === 0 ? {} : { explanation: explain(bench.graph, assessment, entries, id) }),
  };
  return { ...common, holds: failed.length === 0, about };
}

/** The work that comes before anything else. */
function workDue({ tasks }: Assessment): NonNullable<ExpectedMachine['due']> {
  return tasks.flatMap(({ task, state }) => (comesFirst(state) ? [{ task, state }] : []));
}

function failures(bench: Bench, home: Home, assessment: Assessment, task: TaskAssessment, expect: ExpectTask): readonly Asserted[] {
  const observations = assessment.record[task.task] ?? [];
  const governing = task.governing === null ? undefined : (bench.graph.nodes[task.governing] as Trigger | undefined);
  const seen = observations.find(({ node }) => node === task.governing);
  const because = expect.because === undefined || (governing !== undefined && isBecause(bench, home, expect.because, governing, seen));
  const taking = observations.flatMap(({ limit }) => limit?.due ?? []);
  return [
    ...(task.state === expect.state ? [] : (['state'] as const)),
    ...(because ? [] : (['because'] as const)),
    ...(isUntil(bench, task.due, taking, expect.until) ? [] : (['until'] as const)),
  ];
}

/** The due point that governs is one of those named, and every one named is the due point of a limit that takes part. */
function isUntil(bench: Bench, due: DuePoint | null, taking: readonly DuePoint[], named: readonly PointNode[]): boolean {
  if (named.length === 0) return true;
  const all = due === null ? taking : [due, ...taking];
  return (
    due !== null &&
    named.some((point) => isPoint(bench, due, point)) &&
    named.every((point) => all.some((each) => isPoint(bench, each, point)))
  );
}

function isPoint(bench: Bench, due: DuePoint, point: PointNode): boolean {
  if (point.kind === 'point-date') {
    const day = due.on === 'calendar' ? due.day : due.on === 'moment' ? due.at.day : null;
    return day === dayOf(point.date.text);
  }
  const meter = bench.meaning(point.meter)?.id ?? point.meter.text;
  const counts = findUnit(bench.graph.meters.find(({ id }) => id === meter)?.unit ?? '');
  const unit = findUnit(point.value.unit.text);
  const ticks = counts === null || unit === null ? null : ticksIn(point.value.number, unit, counts);
  return due.on === 'meter' && due.meter === meter && due.ticks === ticks;
}

function expectedOf(bench: Bench, expect: ExpectTask): ExpectedTask['expected'] {
  const because = expect.because === undefined ? undefined : placeAt(bench, expect.because.at).text;
  return {
    state: expect.state,
    ...(because === undefined ? {} : { because }),
    until: expect.until.map(({ at }) => placeAt(bench, at).text),
  };
}

function governingOf({ graph }: Bench, { governing }: TaskAssessment): ExpectedTask['actual']['governing'] {
  const node = governing === null ? undefined : graph.nodes[governing];
  return node === undefined ? null : { node: node.id, place: placeOf(graph, node.origin) };
}
