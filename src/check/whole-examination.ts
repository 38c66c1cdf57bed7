import type { Examination } from './examiner.js';
import { bringAll } from './load/bring-all.js';
import { usesInExample } from './references-in-examples.js';
import { accessRefusals, exampleRefusals, findingRefusals, refusals, remarks, weekdayRefusals } from './rules/index.js';

/** All that there is to say of a schedule, from however many files. */
export const wholeExamination: Examination = {
  rules: [...refusals, ...findingRefusals, ...exampleRefusals, ...accessRefusals, ...weekdayRefusals, ...remarks],
  bring: bringAll,
  ofExample: usesInExample,
};
