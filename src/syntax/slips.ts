/**
 * Slips that many authors make, told by what they should have written. Each knows the few words around the place at which reading failed.
 *
 * Law: a slip only explains a mistake that is there already; what can be read is never looked at.
 */
import type { Around, SlipKind, Slip } from './slip.js';
import {
  withoutOf,
  unitLast,
  joinedByAnd,
  orEvery,
  whicheverComes,
  whicheverInBrackets,
  adverbInMonth,
  halfAnHour,
  monthFirst,
  oftenInMonth,
  withoutEvent,
  everyWord,
  everyMonth,
  firstAfter,
  openSerials,
} from './slips-in-timing.js';
import { everyNth, everyTimes, orAfter } from './slips-on-other-work.js';
import { everyOther, everyPlaced, everyWeekOn, placedWithoutThe } from './slips-on-weekdays.js';
import { windowBefore, windowLast } from './slips-on-windows.js';
import {
  unitWord,
  supplyWithoutUnit,
  readsSeveral,
  amountLast,
  bandSide,
  bandCompared,
  comparing,
  bandWithoutVerdict,
  nameOfTwoWords,
} from './slips-in-readings.js';
import {
  eachRound,
  roundOfUse,
  whoDoesIt,
  otherWord,
  adverb,
  conditionWord,
  idleAlone,
  dayOfWork,
  eachForEvery,
  timeWithoutThat,
  saidTwice,
  timesInOneWord,
} from './slips-in-words.js';

/** The first slip that the words around a failure show. `opener` is the word that began the clause. */
export function slipAt(around: Around, opener: string | undefined): Slip | undefined {
  for (const kind of kinds) {
    const found = kind(around, opener);
    if (found !== undefined) return found;
  }
  return undefined;
}

const kinds: readonly SlipKind[] = [
  saidTwice,
  conditionWord,
  idleAlone,
  dayOfWork,
  timesInOneWord,
  everyWeekOn,
  everyOther,
  everyPlaced,
  everyNth,
  orAfter,
  everyTimes,
  placedWithoutThe,
  firstAfter,
  openSerials,
  whicheverInBrackets,
  whicheverComes,
  joinedByAnd,
  orEvery,
  monthFirst,
  oftenInMonth,
  windowLast,
  windowBefore,
  eachRound,
  roundOfUse,
  unitWord,
  whoDoesIt,
  otherWord,
  supplyWithoutUnit,
  readsSeveral,
  amountLast,
  bandSide,
  bandCompared,
  halfAnHour,
  adverbInMonth,
  withoutEvent,
  everyWord,
  everyMonth,
  adverb,
  comparing,
  unitLast,
  withoutOf,
  nameOfTwoWords,
  bandWithoutVerdict,
  timeWithoutThat,
  eachForEvery,
];
