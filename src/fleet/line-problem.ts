/**
 * What can be wrong with a line of a fleet. Codes keep their meaning; docs/fleets.md says of each what it is and what helps.
 *
 * The first ones keep a machine from being judged; those from `unknown-name` on are only told.
 */
export type LineCode =
  | 'not-an-object'
  | 'no-name'
  | 'unknown-member'
  | 'no-day'
  | 'wrong-value'
  | 'other-model'
  | 'wrong-heading'
  | 'wrong-row'
  | 'no-room'
  | 'unknown-name'
  | 'other-serial'
  | 'same-machine';

/** One thing that is wrong with a line, and a way out. */
export interface LineProblem {
  readonly code: LineCode;
  /** A sentence without a full stop; names as they stand in the line in backticks. */
  readonly what: string;
  /** What to do, as a whole sentence. */
  readonly help: string;
}

/** What helps, by code. */
const HELP: Readonly<Record<LineCode, string>> = {
  'not-an-object': 'Write each machine as one JSON object on a line of its own: {"machine":"north-17","on":"2026-06-14","meters":{…}}.',
  'no-name': 'Give each machine a name of its own, of 1 to 200 characters.',
  'unknown-member': 'A machine has `machine`, `model`, `serial`, `inService`, `on`, `meters` and `done`, or `machine` and `entries`.',
  'no-day': 'Write the day of the reading beside the meters: `on`, as YYYY-MM-DD.',
  'wrong-value': 'Write days as YYYY-MM-DD and numbers plainly, as in 1234.5, and `done` as a day, and perhaps meters, for each task.',
  'other-model': 'Ask the schedule of its own model about it.',
  'wrong-heading': 'Write a heading with `machine` in it, and each column once: machine,on,inService,serial,meters.METER,done.TASK.',
  'wrong-row': 'Write one cell for each column of the heading, with quotes round a cell that holds the separator.',
  'no-room': 'Make the fleet larger, or empty it with `clear` first.',
  'unknown-name': '`duewright rules SCHEDULE` says what tasks and meters there are.',
  'other-serial': 'It was judged all the same. Look whether another schedule, or another edition, is made for it.',
  'same-machine': 'Each line was judged by itself. Keep the one that is right, or give each machine a name of its own.',
};

/** All codes. */
export const LINE_CODES = Object.keys(HELP) as readonly LineCode[];

/** A problem with the help that its code has. */
export function lineProblem(code: LineCode, what: string): LineProblem {
  return { code, what, help: HELP[code] };
}
