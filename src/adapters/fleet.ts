/**
 * Many machines against one schedule: in columns, from a stream over several threads (Node.js), or as SQL; and one machine watched
 * as entries come in.
 *
 * The public entry `duewright/fleet`.
 */
export { assessFleet } from './fleet/assess-fleet.js';
export { findMachine } from './fleet/find-machine.js';
export { Fleet } from '../fleet/fleet.js';
export { STATES, VERDICTS } from '../fleet/fleet-states.js';
export { planColumns } from '../fleet/plan-columns.js';
export { readMachine } from '../fleet/read-machine.js';
export { toSql } from '../sql/to-sql.js';
export { nextChange } from '../watch/next-change.js';
export { watch } from '../watch/watch.js';

export type { FleetOptions, FleetProgress } from './fleet/assess-fleet.js';
export type { LineSource } from './fleet/fleet-blocks.js';
export type { LineNote } from './fleet/line-note.js';
export type { BlockAnswer, FleetFormat } from './fleet/judge-block.js';
export type { ColumnPlan } from '../fleet/column-plan.js';
export type { Added } from '../fleet/fleet.js';
export type { FleetStates } from '../fleet/fleet-states.js';
export type { LineCode, LineProblem } from '../fleet/line-problem.js';
export type { LastDoing, MachineLine, MachineLogbook } from '../fleet/machine-line.js';
export type { MachineRead } from '../fleet/read-machine.js';
export type { DialectName } from '../sql/dialect.js';
export type { Refused, ScheduleSql } from '../sql/to-sql.js';
export type { NextChange } from '../watch/next-change.js';
export type { NextMeter } from '../watch/next-meters.js';
export type { NextMoment, NextOptions } from '../watch/next-moment.js';
export type { TaskChange, Watch, WatchStep } from '../watch/watch.js';
