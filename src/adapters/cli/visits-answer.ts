import type { Day, Moment } from '../../values/moment.js';
import type { Outlook, VisitsAhead } from '../../ahead.js';

/** What `duewright visits --json` answers: the visits of an outlook. */
export interface VisitsAnswer extends VisitsAhead {
  readonly format: 'duewright-visits';
  readonly version: 1;
  readonly schedule: { readonly name: string; readonly fingerprint: string };
  readonly now: Moment;
  /** The time looked at. */
  readonly from: Day;
  readonly to: Day;
}

/** Cuts the visits out of an outlook. */
export function visitsAnswer({ schedule, now, from, to, visits }: Outlook): VisitsAnswer {
  return { format: 'duewright-visits', version: 1, schedule, now, from, to, ...visits };
}
