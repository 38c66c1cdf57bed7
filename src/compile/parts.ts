/**
 * The parts of a compiler. Between them and what every compiler has they are `compile`.
 */
import { bringAll } from '../check/load/bring-all.js';
import { usesInExample } from '../check/references-in-examples.js';
import { accessRefusals, exampleRefusals, findingRefusals, remarks as sayings, weekdayRefusals } from '../check/rules/index.js';
import {
  accessReader,
  conditionReader,
  exampleReader,
  findingReader,
  meaningTeller,
  weekdayMarkReader,
} from '../syntax/whole-machinery.js';
import { compileAccess } from './access.js';
import { accessCheck } from './access-check.js';
import { compileByWeek } from './by-week.js';
import type { CompilerPart } from './compiler-part.js';
import { compileDefects, compileDipsticks, compileGauges } from './machine.js';

/** Conditions: what is asked for, or not, while something holds; stops. */
export const conditions: CompilerPart = { reader: conditionReader };

/** Gauges and dipsticks with their bands, defects with their classes, and what follows from each. */
export const findings: CompilerPart = {
  reader: findingReader,
  rules: findingRefusals,
  makers: { gauges: compileGauges, dipsticks: compileDipsticks, defects: compileDefects },
};

/** Moving parts, places, walks, steps and what must never be; with the proof that everything can be reached and left again. */
export const access: CompilerPart = {
  reader: accessReader,
  rules: accessRefusals,
  makers: { access: compileAccess },
  graphChecks: [accessCheck],
};

/** Worked examples: that they can be read and are about this schedule. `runExamples` holds them against the engine. */
export const examples: CompilerPart = { reader: exampleReader, rules: exampleRefusals, ofExample: usesInExample };

/** Days of the week in a month or a year, and every so many weeks. */
export const weekdayMarks: CompilerPart = { reader: weekdayMarkReader, rules: weekdayRefusals, makers: { byWeek: compileByWeek } };

/** Schedules of several files: parts that are used, variants of a base, attachments that follow schedules of their own. */
export const files: CompilerPart = { bring: bringAll };

/** Mistakes told by what was meant: misspelt words, slips that many make, odd forms, a right example of each clause. */
export const advice: CompilerPart = { reader: meaningTeller };

/** Warnings and notes: what is right, and perhaps not what was wanted. */
export const remarks: CompilerPart = { rules: sayings };
