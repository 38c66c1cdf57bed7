/**
 * A change that would alter the state, as a sentence: "Once it is done it is clear."
 */
import type { TaskState } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import type { Beyond, Change, MeterReaches, Reads } from '../explain/change.js';
import { unitsOf } from '../values/ticks.js';
import { meterQuantity, titleOf } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import { theInstrument, valueInWords } from './condition-in-words.js';
import { dayInWords } from './dates-in-words.js';
import { safeText } from './safe-text.js';
import { stateInWords } from './state-in-words.js';

/** One sentence, with its full stop. */
export function changeSentence(change: Change, names: Titles): string {
  switch (change.change) {
    case 'do-it':
      return `Once it is done it ${becomes(change.becomes, 'is')}.`;
    case 'state-it':
      return `If you state that it was done by today, it ${becomes(change.becomes, 'is')}.`;
    case 'meter-reaches':
      return `It ${becomes(change.becomes, 'becomes')} ${meterPoint(change, names)}.`;
    case 'date-reaches':
      return `It ${becomes(change.becomes, 'becomes')} on ${dayInWords(change.day)}.`;
    case 'reads':
      return `It would be ${stateInWords(change.becomes)} if ${reading(change, names)}.`;
    case 'happens':
      return `It would be ${stateInWords(change.becomes)} on “${titleOf(names.events[change.event], change.event)}”.`;
    case 'opens':
      return `It would be ${stateInWords(change.becomes)} if “${titleOf(names.defects[change.defect], change.defect)}” were found as ${safeText(change.class)}.`;
    default:
      return assertNever(change);
  }
}

function becomes(state: TaskState, verb: string): string {
  if (state === 'coming-up') return 'is coming up';
  return state === 'resting' ? 'rests' : `${verb} ${stateInWords(state)}`;
}

/** At a round figure, or just beyond one. */
function meterPoint({ meter, ticks, dialBehind }: MeterReaches, names: Titles): string {
  const beyond = !isRound(ticks) && isRound(ticks - 1);
  const total = beyond ? ticks - 1 : ticks;
  const dial = dialBehind === 0 ? '' : ` in all (${meterQuantity(total - dialBehind, meter, names)} on the dial)`;
  return `${beyond ? 'beyond' : 'at'} ${meterQuantity(total, meter, names)} of ${safeText(meter)}${dial}`;
}

/** Whether so many ticks can be said in hundredths of the unit. */
function isRound(ticks: number): boolean {
  return Number.isInteger(Math.round(unitsOf(ticks) * 1e6) / 1e4);
}

const BEYOND: Readonly<Record<Beyond, string>> = { above: 'above', 'at-least': 'at least', below: 'below', 'at-most': 'at most' };

function reading({ instrument, beyond, value }: Reads, names: Titles): string {
  if (names.dipsticks[instrument] !== undefined) {
    const dipstick = { is: 'dipstick', id: instrument } as const;
    return `${theInstrument(dipstick, names)} read ${BEYOND[beyond]} ${valueInWords(value, dipstick, names)}`;
  }
  const is = names.meters[instrument] === undefined ? 'gauge' : 'meter';
  return `${theInstrument({ is, id: instrument }, names)} read ${BEYOND[beyond]} ${valueInWords(value, { is, id: instrument }, names)}`;
}

