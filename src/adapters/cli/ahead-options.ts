import type { Command } from 'commander';
import type { Moment } from '../../values/moment.js';
import { parseWhen } from './parse-when.js';
import { type Parsed, refused, understood } from './parsed.js';

/** When the question is asked, and how far ahead it looks. */
export interface AheadOptions {
  readonly on?: string;
  readonly until?: string;
}

const YEAR = 365;
/** Simulated use is not worth more, and a far day costs time. */
const FARTHEST = 3 * 366;

/** Adds `--on` and `--until`. */
export function addAheadOptions(command: Command): Command {
  return command
    .option('--on <when>', 'a date, or a date and a time in quotes, instead of now')
    .option('--until <day>', 'the last day to look at; otherwise a year ahead');
}

/** Days from now to the last day looked at. Refused for what is no day, or not within three years. */
export function readUntil({ until }: AheadOptions, now: Moment): Parsed<number> {
  if (until === undefined) return understood(YEAR);
  const last = parseWhen(until);
  if (!last.ok) return refused(last.problem);
  const days = last.value.day - now.day;
  return days < 1 || days > FARTHEST ? refused(`\`--until ${until}\` must be a day after today and within three years.`) : understood(days);
}
