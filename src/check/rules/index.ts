/**
 * Every rule, in the order in which they are run. A rule joins by a line here.
 */
import type { Rule } from '../context.js';
import { notAPosition, restIncomplete, restTwice, stepGoesNowhere, walkRepeated } from './access.js';
import { askedInCircle } from './asked-in-circle.js';
import { bands } from './bands.js';
import { contradiction } from './contradiction.js';
import { dependenceCycle } from './dependence-cycle.js';
import { duplicateName } from './duplicate-name.js';
import { dutyNotOnHours, dutyTooFine, dutyWithoutInterval } from './duties.js';
import { languageEdition, missingFits, repeatedHeadClause, variantWithoutVaries } from './header.js';
import { impossibleDate } from './impossible-date.js';
import { allowanceTooLong, countWithoutInterval, marginWithoutLimit } from './margins.js';
import { misleadingName } from './misleading-name.js';
import { neverDue } from './never-due.js';
import { neverGoverns } from './never-governs.js';
import { qualifiedDeclaration } from './qualified-declaration.js';
import { quantities } from './quantities.js';
import { repeatedClause } from './repeated-clause.js';
import { reversedSerials } from './reversed-serials.js';
import { firstAfterEvery, firstOfMarks, multipleNotOnMeter, stages } from './stages.js';
import { unknownName } from './unknown-name.js';
import { unknownWord } from './unknown-word.js';
import { unusedName } from './unused-name.js';
import { wrongKindOfName } from './wrong-kind-of-name.js';

export const rules: readonly Rule[] = [
  languageEdition,
  repeatedHeadClause,
  variantWithoutVaries,
  missingFits,
  reversedSerials,
  duplicateName,
  qualifiedDeclaration,
  misleadingName,
  unknownName,
  wrongKindOfName,
  unknownWord,
  unusedName,
  impossibleDate,
  quantities,
  bands,
  stages,
  firstOfMarks,
  multipleNotOnMeter,
  firstAfterEvery,
  dutyNotOnHours,
  dutyWithoutInterval,
  dutyTooFine,
  neverGoverns,
  neverDue,
  countWithoutInterval,
  marginWithoutLimit,
  allowanceTooLong,
  repeatedClause,
  contradiction,
  dependenceCycle,
  askedInCircle,
  notAPosition,
  restIncomplete,
  restTwice,
  stepGoesNowhere,
  walkRepeated,
];
