/**
 * Looks ahead: when tasks will fall due, how a machine is used, which work to do together, what it takes.
 *
 * Apart from `duewright/engine`, which it goes beside, so that whoever only asks what is due loads none of it. Same rules: nothing is kept between
 * calls, and nothing asks for the time.
 */
export { lookAhead } from './outlook/look-ahead.js';
export { ratesOfUse } from './outlook/rate-of-use.js';
export { suppliesAhead } from './outlook/supplies-ahead.js';
export { suppliesNeeded } from './outlook/supplies-needed.js';
export { leastSquares, leastSquaresThroughOrigin } from './outlook/least-squares.js';
export { fitPowerLaw, laplaceStatistic, repairTrend } from './outlook/repair-trend.js';
export { smooth } from './outlook/smoothing.js';
export { theilSen } from './outlook/theil-sen.js';
export { failureFindingInterval, inspectionInterval, looksWithin, meanTimeBetween } from './outlook/inspection-interval.js';

export type { Estimate } from './outlook/estimate.js';
export type { DateRange } from './outlook/forecast.js';
export type { OutlookOptions } from './outlook/look-ahead.js';
export type * from './outlook/outlook.js';
export type { FittedLine } from './outlook/least-squares.js';
export type { RateOfUse, Season } from './outlook/rate-of-use.js';
export type { PowerLaw, RepairTrend } from './outlook/repair-trend.js';
export type { Smoothed } from './outlook/smoothing.js';
export type { SuppliesAhead } from './outlook/supplies-ahead.js';
export type { PlannedWork, SupplyNeeded, WorkNeeded } from './outlook/supplies-needed.js';
export type { Point, RobustLine } from './outlook/theil-sen.js';
export type { VisitAhead, VisitsAhead } from './outlook/visits-ahead.js';
export type { Foreseen, TaskAhead } from './outlook/year-ahead.js';
