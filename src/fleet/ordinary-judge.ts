import { assessTimeline, worldOf } from '../assess/assess.js';
import { assessTask } from '../assess/assess-task.js';
import type { Assessment, Hold, TaskAssessment } from '../assess/assessment.js';
import { defectHolding } from '../assess/compose-assessment.js';
import { stopHolds } from '../assess/stop-holds.js';
import { verdictOf } from '../assess/verdict.js';
import type { Entry } from '../history/entry.js';
import { readTimeline } from '../history/read-timeline.js';
import { type Day, onDay } from '../values/moment.js';
import { type FleetStates, STATES, VERDICTS } from './fleet-states.js';
import type { MachineColumns } from './machine-columns.js';

const options = { withoutRecord: true } as const;

/**
 * The ordinary assessor beside the columns: for machines whose history no columns hold, and for the tasks of all machines whose
 * rules ask for more than columns hold.
 */
export class OrdinaryJudge {
  constructor(
    private readonly columns: MachineColumns,
    private readonly entriesOf: (machine: number) => readonly Entry[],
  ) {}

  /** Writes over what the columns could not tell. */
  judge(today: Day, into: FleetStates): void {
    const { plan, count, latest, ordinary } = this.columns;
    for (let m = 0; m < count; m += 1) {
      if (ordinary.has(m) || (latest[m] ?? 0) > today) this.whole(m, today, into);
      else if (plan.verdictOutside) this.part(m, today, into);
    }
  }

  private whole(machine: number, today: Day, into: FleetStates): void {
    const { graph } = this.columns.plan;
    const now = onDay(today);
    const assessment: Assessment = assessTimeline(graph, readTimeline(this.entriesOf(machine), graph, now), now, options);
    assessment.tasks.forEach((task, index) => this.write(machine, index, task, into));
    into.verdict[machine] = VERDICTS.indexOf(assessment.verdict);
  }

  /** The tasks outside the columns; the verdict is then the graver of what the two sides have to say. */
  private part(machine: number, today: Day, into: FleetStates): void {
    const { plan, stride } = this.columns;
    const now = onDay(today);
    const world = worldOf(plan.graph, readTimeline(this.entriesOf(machine), plan.graph, now), now, options);
    const holds: Hold[] = [...stopHolds(world), ...defectHolding(world).holds];
    for (const index of plan.outside) {
      const task = plan.graph.tasks[index];
      if (task === undefined) continue;
      const result = assessTask(world, task);
      holds.push(...result.holds);
      this.write(machine, index, result.assessment, into);
    }
    const tasks = plan.tasks.map(({ id, index }) => standIn(id, into.state[index * stride + machine] ?? 0));
    into.verdict[machine] = Math.max(into.verdict[machine] ?? 0, VERDICTS.indexOf(verdictOf(world, tasks, holds)));
  }

  private write(machine: number, index: number, task: TaskAssessment, into: FleetStates): void {
    const at = index * this.columns.stride + machine;
    into.state[at] = STATES.indexOf(task.state);
    into.left[at] = task.left ?? Number.NaN;
    into.governing[at] = task.governing ?? -1;
  }
}

/** As much of a task's assessment as a verdict looks at. */
function standIn(task: string, state: number): TaskAssessment {
  return { task, state: STATES[state] ?? 'clear', due: null, governing: null, left: null, missing: [], resting: null };
}
