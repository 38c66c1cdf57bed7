/**
 * Runs compiled schedules: everything that an owner's question takes, and no compiler.
 *
 * What is written here runs wherever JavaScript does. Nothing is kept between calls, and nothing asks for the time.
 */
export { stanceOnRecord, walkRound } from './access/plan-walk-round.js';
export { assess, assessTimeline } from './assess/assess.js';
export { tasksForWalk } from './assess/tasks-for-walk.js';
export { BudgetError, defaultBudget } from './assess/world.js';
export { explain, explainer } from './explain/explain.js';
export { applyChange, justShort } from './explain/apply-change.js';
export { namesOf } from './explain/names.js';
export { partsOf } from './graph/node-references.js';
export { readRuleGraph } from './graph/read-rule-graph.js';
export { tasksOfWork } from './graph/tasks-of-work.js';
export { canonicalJson } from './history/canonical-json.js';
export { readEntries } from './history/read-entries.js';
export { readTimeline } from './history/read-timeline.js';
export { workNotNoted } from './history/work-not-noted.js';
export { meantMember } from './history/meant-member.js';
export { validateEntry } from './history/validate-entry.js';
export { duringOuting } from './outlook/during-outing.js';
export { civilOf, dayNumber, dayOf, formatDate, parseDate } from './values/civil.js';

export type { WalkRoundOptions } from './access/plan-walk-round.js';
export type * from './access/walk-round.js';
export type * from './assess/assessment.js';
export type { TasksForWalk } from './assess/tasks-for-walk.js';
export type * from './explain/change.js';
export type * from './explain/explanation.js';
export type { ExplainOptions } from './explain/explain.js';
export type { Situation } from './explain/apply-change.js';
export type { RuleGraphRead } from './graph/read-rule-graph.js';
export type * from './graph/rule-graph.js';
export type { Entry, EntryId, EntryKind, EntryOf } from './history/entry.js';
export type * from './history/timeline.js';
export type { DuringLine, DuringOptions, IntendedOuting, OutingOutlook } from './outlook/during-outing.js';
export type { EntryProblem, ValidatedEntry } from './history/validate-entry.js';
export type { Civil, ParsedDate } from './values/civil.js';
export type { Day, Moment } from './values/moment.js';
