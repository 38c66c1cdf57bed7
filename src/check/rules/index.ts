/**
 * Every rule. A rule joins by a line here; lists are run one after the other, each in its order.
 */
import type { Rule } from '../context.js';
import { notAPosition } from './not-a-position.js';
import { notFromOutings } from './not-from-outings.js';
import { oftenMisplaced } from './often-misplaced.js';
import { restIncomplete } from './rest-incomplete.js';
import { restTwice } from './rest-twice.js';
import { stepGoesNowhere } from './step-goes-nowhere.js';
import { walkRepeated } from './walk-repeated.js';
import { languageEdition } from './language-edition.js';
import { repeatedHeadClause } from './repeated-head-clause.js';
import { variantWithoutVaries } from './variant-without-varies.js';
import { missingFits } from './missing-fits.js';
import { stages } from './stages-in-order.js';
import { firstAfterEvery } from './first-after-every.js';
import { firstOfMarks } from './first-of-marks.js';
import { multipleNotOnMeter } from './multiple-not-on-meter.js';
import { standstillMisplaced } from './standstill-misplaced.js';
import { marginWithoutLimit } from './margin-without-limit.js';
import { allowanceTooLong } from './allowance-too-long.js';
import { countWithoutInterval } from './count-without-interval.js';
import { dutyNotOnHours } from './duty-not-on-hours.js';
import { dutyWithoutInterval } from './duty-without-interval.js';
import { dutyTooFine } from './duty-too-fine.js';
import { askedInCircle } from './asked-in-circle.js';
import { bands } from './bands.js';
import { countsFromItself } from './counts-from-itself.js';
import { contradiction } from './contradiction.js';
import { dependenceCycle } from './dependence-cycle.js';
import { duplicateName } from './duplicate-name.js';
import { happensByItself } from './happens-by-itself.js';
import { impossibleDate } from './impossible-date.js';
import { misleadingName } from './misleading-name.js';
import { neverDue } from './never-due.js';
import { neverGoverns } from './never-governs.js';
import { qualifiedDeclaration } from './qualified-declaration.js';
import { quantities } from './quantities.js';
import { quantitiesInExamples } from './quantities-in-examples.js';
import { repeatedClause } from './repeated-clause.js';
import { reversedSerials } from './reversed-serials.js';
import { tooManyPlaces } from './too-many-places.js';
import { tooMuchCovered } from './too-much-covered.js';
import { unknownName } from './unknown-name.js';
import { unknownWord } from './unknown-word.js';
import { unusedName } from './unused-name.js';
import { weekdayUnclear } from './weekday-unclear.js';
import { wrongKindOfName } from './wrong-kind-of-name.js';

/** What keeps a schedule from being compiled, whatever it is made of. */
export const refusals: readonly Rule[] = [
  languageEdition,
  repeatedHeadClause,
  variantWithoutVaries,
  reversedSerials,
  duplicateName,
  qualifiedDeclaration,
  misleadingName,
  unknownName,
  wrongKindOfName,
  unknownWord,
  impossibleDate,
  quantities,
  stages,
  firstOfMarks,
  multipleNotOnMeter,
  notFromOutings,
  standstillMisplaced,
  oftenMisplaced,
  dutyNotOnHours,
  dutyWithoutInterval,
  dutyTooFine,
  countWithoutInterval,
  marginWithoutLimit,
  allowanceTooLong,
  repeatedClause,
  dependenceCycle,
  countsFromItself,
  tooMuchCovered,
  notAPosition,
];

/** What keeps one with gauges and dipsticks from being compiled. Each looks at what is read of them only. */
export const findingRefusals: readonly Rule[] = [bands];

/** What keeps one with worked examples from being compiled. Each looks at those only. */
export const exampleRefusals: readonly Rule[] = [quantitiesInExamples, happensByItself];

/** What keeps one with moving parts and places from being compiled. Each looks at their declarations only. */
export const accessRefusals: readonly Rule[] = [tooManyPlaces, restIncomplete, restTwice, stepGoesNowhere, walkRepeated];

/** What keeps one with marks by the week from being compiled. Each looks at those only. */
export const weekdayRefusals: readonly Rule[] = [weekdayUnclear];

/** What is only said: warnings and notes. */
export const remarks: readonly Rule[] = [missingFits, unusedName, firstAfterEvery, neverGoverns, neverDue, contradiction, askedInCircle];
