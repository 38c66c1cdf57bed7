import fc from 'fast-check';
import { declarationWords, reservedWords, softWords } from '../../src/syntax/words.js';

/** One change of a text: what is taken out at a share of its length, and what is put there. */
export interface Edit {
  readonly where: number;
  readonly takes: number;
  readonly puts: string;
}

const declarations = [
  '\ntask extra "Extra"\n  every 10 h of engine\n',
  '\nmeter engine "Second" counts h\n',
  '\nduty wet "Wet ground"\n',
  '\nat rest engine stopped\n',
  '\nexample "Short"\n  2026-03-02 engine 1200 h\n',
];

/** What is put in: single letters mostly, as somebody types; and now and then what hurts most. */
const puts = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom(...'aelnorst -0179\n"#().,'.split('')) },
  {
    weight: 2,
    arbitrary: fc.constantFrom(...declarationWords.map((word) => `\n${word} `), ...[...reservedWords].map((word) => ` ${word} `)),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(...softWords, 'evry', 'taks', 'tsak', 'whichevr', '1,5', '8:30', 'Engine', '\u200b', '“', '\r', '\u2028'),
  },
  { weight: 1, arbitrary: fc.constantFrom(...declarations) },
  { weight: 2, arbitrary: fc.constant('') },
);

/** Courses of edits, one after the other. */
export function edits(most: number): fc.Arbitrary<readonly Edit[]> {
  const takes = fc.oneof({ weight: 4, arbitrary: fc.nat(2) }, { weight: 1, arbitrary: fc.nat(120) });
  return fc.array(fc.record({ where: fc.double({ min: 0, max: 1, noNaN: true }), takes, puts }), { minLength: 1, maxLength: most });
}

/** The text after one edit. */
export function edited(text: string, { where, takes, puts: put }: Edit): string {
  const at = Math.floor(where * text.length);
  return text.slice(0, at) + put + text.slice(at + takes);
}
