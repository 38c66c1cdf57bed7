/**
 * What is not known, and what would settle it.
 */
import type { Missing } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import { dayInWords } from './dates-in-words.js';
import { quoted, theMeter, titleOf } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import { safeText } from './safe-text.js';

/** What is missing, as a clause: `the coolant temperature gauge has never been read`. */
export function missingSentence(missing: Missing, names: Titles): string {
  switch (missing.what) {
    case 'reading':
      return readingMissing(missing, names);
    case 'meter':
      return `${theMeter(missing.meter, names)} has never been read`;
    case 'meter-at-doing':
      return `nobody noted what ${theMeter(missing.meter, names)} showed at that time (entry ${safeText(missing.entry)})`;
    case 'record':
      return `there is no record of ${quoted(names.tasks[missing.task], missing.task)}`;
    case 'in-service':
      return 'nobody has noted when the machine entered service';
    case 'outing':
      return 'no outing is on record';
    case 'class':
      return `nobody noted how bad ${quoted(names.defects[missing.defect], missing.defect)} is`;
    case 'time-of-day':
      return timeMissing(missing);
    default:
      return assertNever(missing);
  }
}

function readingMissing(missing: Extract<Missing, { what: 'reading' }>, names: Titles): string {
  const instrument = `the ${instrumentTitle(missing.instrument, names)}`;
  switch (missing.because) {
    case 'never-read':
      return `${instrument} has never been read`;
    case 'too-old':
      return `the last reading of ${instrument} is too old`;
    case 'too-few':
      return `${instrument} has been read too few times`;
    default:
      return assertNever(missing.because);
  }
}

function timeMissing({ of, day, entry }: Extract<Missing, { what: 'time-of-day' }>): string {
  const on = `on ${dayInWords(day)}`;
  if (entry === null) return `nobody has said at what time the work ${on} begins`;
  return `nobody noted at what time ${of === 'doing' ? `it was done ${on}` : `the work ${on} began`} (entry ${safeText(entry)})`;
}

/** What to do about it, as a sentence. */
export function settlingSentence(missing: Missing, names: Titles): string {
  switch (missing.what) {
    case 'reading':
      return `Reading the ${instrumentTitle(missing.instrument, names)} now would settle it.`;
    case 'meter':
      return `Reading ${theMeter(missing.meter, names)} now would settle it.`;
    case 'meter-at-doing':
      return `A note of what ${theMeter(missing.meter, names)} showed then, even about, would settle it.`;
    case 'record':
      return 'Do it now, or state what you know of the last time.';
    case 'in-service':
      return 'Do it now, or state when it was last done, or when the machine entered service.';
    case 'outing':
      return 'A record of the work done would settle it.';
    case 'class':
      return `A look at ${quoted(names.defects[missing.defect], missing.defect)}, noted with its class, would settle it.`;
    case 'time-of-day':
      return missing.of === 'doing'
        ? 'Do it now, or note the time at which it was done.'
        : 'The time at which the work begins would settle it.';
    default:
      return assertNever(missing);
  }
}

function instrumentTitle(id: string, names: Titles): string {
  return titleOf(names.gauges[id]?.title ?? names.dipsticks[id]?.title ?? names.meters[id]?.title, id);
}
