import { readingAccess } from './grammar-access.js';
import { readingConditions } from './grammar-conditions.js';
import { readingDefects } from './grammar-defects.js';
import { readingExamples } from './grammar-examples.js';
import { readingInstruments } from './grammar-readings.js';
import { readingWeekdayMarks } from './grammar-weekday-marks.js';
import { type Machinery, machineryWith, type ParserPart } from './machinery.js';
import { mending } from './mending.js';
import { tidy } from './tidy.js';

/** Reads conditions. */
export const conditionReader: ParserPart = { layer: readingConditions };

/** Reads gauges, dipsticks, defects and what follows from them. */
export const findingReader: ParserPart = { layer: (below) => readingDefects(readingInstruments(below)) };

/** Reads moving parts, places and steps. */
export const accessReader: ParserPart = { layer: readingAccess };

/** Reads worked examples. */
export const exampleReader: ParserPart = { layer: readingExamples };

/** Reads marks by the week. */
export const weekdayMarkReader: ParserPart = { layer: readingWeekdayMarks };

/** Tells a mistake by what was meant. */
export const meaningTeller: ParserPart = { layer: mending, oddForm: tidy };

// Building takes some milliseconds, so it is done once, and not on import. It holds nothing from one text to the next.
let built: Machinery | undefined;

/** The machinery of the whole language, built when it is first asked for. */
export function machinery(): Machinery {
  return (built ??= machineryWith([conditionReader, findingReader, accessReader, exampleReader, weekdayMarkReader, meaningTeller]));
}
