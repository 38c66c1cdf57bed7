/**
 * A change that would alter the state, as a sentence: "Once it is done it is clear."
 */
import type { TaskState } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import type { Beyond, Change, MeterReaches, Reads } from '../explain/change.js';
import { unitsOf } from '../values/ticks.js';
import { meterQuantity, quoted } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import { theInstrument, valueInWords } from './condition-in-words.js';
import { listed } from '../base/listed.js';
import { dayInWords } from './dates-in-words.js';
import { safeText } from './safe-text.js';
import { stateInWords } from './state-in-words.js';

/** All changes as sentences; points on several axes that bring the same state share one. */
export function changeSentences(changes: readonly Change[], names: Titles): readonly string[] {
  const points = changes.filter((change) => change.change === 'meter-reaches' || change.change === 'date-reaches');
  const states = [...new Set(points.map((change) => change.becomes))];
  const shared = states.map(
    (state) =>
      `It ${becomes(state, 'becomes')} ${listed(
        points.filter((change) => change.becomes === state).map((change) => pointOf(change, names)),
        'or',
      )}.`,
  );
  const others = changes.filter((change) => change.change !== 'meter-reaches' && change.change !== 'date-reaches');
  const doing = others.filter((change) => change.change === 'do-it' || change.change === 'state-it');
  return [
    ...doing.map((change) => changeSentence(change, names)),
    ...shared,
    ...others.filter((change) => change.change !== 'do-it' && change.change !== 'state-it').map((change) => changeSentence(change, names)),
  ];
}

function pointOf(change: Extract<Change, { change: 'meter-reaches' | 'date-reaches' }>, names: Titles): string {
  return change.change === 'meter-reaches' ? meterPoint(change, names) : `on ${dayInWords(change.day)}`;
}

/** One sentence, with its full stop. */
function changeSentence(change: Change, names: Titles): string {
  switch (change.change) {
    case 'do-it':
      return `Once it is done it ${becomes(change.becomes, 'is')}.`;
    case 'state-it':
      return `If you state that it was done by today, it ${becomes(change.becomes, 'is')}.`;
    case 'meter-reaches':
    case 'date-reaches':
      return `It ${becomes(change.becomes, 'becomes')} ${pointOf(change, names)}.`;
    case 'reads':
      return `It would be ${stateInWords(change.becomes)} if ${reading(change, names)}.`;
    case 'happens':
      return `It would be ${stateInWords(change.becomes)} on ${quoted(names.events[change.event], change.event)}.`;
    case 'opens':
      return `It would be ${stateInWords(change.becomes)} if ${quoted(names.defects[change.defect], change.defect)} were found as ${safeText(change.class)}.`;
    default:
      return assertNever(change);
  }
}

function becomes(state: TaskState, verb: string): string {
  if (state === 'coming-up') return 'is coming up';
  return state === 'resting' ? 'rests' : `${verb} ${stateInWords(state)}`;
}

/** At a round figure, or just beyond one. */
function meterPoint({ meter, ticks, dialBehind, becomes: state }: MeterReaches, names: Titles): string {
  // Overdue begins one tick beyond its point, whatever figure that point is.
  const beyond = state === 'overdue' || (!isRound(ticks) && isRound(ticks - 1));
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
