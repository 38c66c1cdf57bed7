/**
 * What `parse` promises beyond accepting the grammar.
 */
import { describe, expect, test } from 'vitest';
import { clauseExamples } from '../../src/syntax/clause-examples.js';
import { parse } from '../../src/syntax/parse.js';
import { declarationWords, clauseWords, reservedWords, softWords, stepWords } from '../../src/syntax/words.js';
import { MONTH_NAMES } from '../../src/values/calendar.js';

describe('spans', () => {
  test('hold exactly what a node was read from, and lie in the file that was named', () => {
    const text = 'schedule t "T"\ntask a "A" every 100 h of engine or 12 months, whichever first takes 5 min';
    const task = parse(text, 3).file?.declarations[0];
    expect(task?.kind === 'task' ? task.clauses.map(({ at }) => [at.file, text.slice(at.start, at.end)]) : []).toEqual([
      [3, 'every 100 h of engine or 12 months, whichever first'],
      [3, 'takes 5 min'],
    ]);
  });
});

describe('texts', () => {
  test('have their escapes resolved, once', () => {
    expect(parse('schedule t "a \\"b\\" \\\\\\" c"').file?.header.title.text).toBe('a "b" \\" c');
  });

  test('keep everything else, `#` included', () => {
    expect(parse('schedule t "50 % #2 °"').file?.header.title.text).toBe('50 % #2 °');
  });
});

test('numbers keep their digits', () => {
  const task = parse('schedule t "T" task a "A" uses 06.60 L oil').file?.declarations[0];
  const clause = task?.kind === 'task' ? task.clauses[0] : undefined;
  expect(clause?.kind === 'uses' ? clause.items[0]?.number : undefined).toMatchObject({ text: '06.60', value: 6.6 });
});

describe('help', () => {
  const step = /^(?:back|one)$/;
  const heads = /^(?:language|edition|fits|varies|use)$/;
  const declared: readonly string[] = declarationWords;

  test.each(Object.entries(clauseExamples))('the example for `%s` is right', (word, example) => {
    const frame = declared.includes(word)
      ? `schedule t "T" ${example}`
      : heads.test(word)
        ? `schedule t "T" ${example}`
        : step.test(word)
          ? `schedule t "T" step s "S" a b to c ${example}`
          : word === 'expect'
            ? `schedule t "T" example "E" 2026-03-02 ${example}`
            : `schedule t "T" task t "T" ${example}`;
    expect(parse(frame).diagnostics).toEqual([]);
    expect(example.startsWith(word)).toBe(true);
  });

  test('there is one for every word that opens something', () => {
    expect([...declarationWords, ...clauseWords, ...stepWords].filter((each) => !Object.hasOwn(clauseExamples, each))).toEqual([]);
  });
});

describe('words', () => {
  test('are reserved or soft, not both', () => {
    expect(softWords.filter((each) => reservedWords.has(each))).toEqual([]);
  });

  test.each([...softWords])('`%s` can be a name', (word) => {
    const text = `schedule ${word} "T" meter ${word} "M" counts h task ${word} "A" every 5 h of ${word} covers ${word} at ${word} on ${word} with ${word} ${word}`;
    const allowed = word === 'refuelling' || word === 'work' ? text.replace(`on ${word}`, 'on x').replace('of work', 'of x') : text;
    expect(parse(allowed).diagnostics).toEqual([]);
  });

  test.each([...reservedWords])('`%s` cannot', (word) => {
    expect(parse(`schedule t "T" meter ${word} "M" counts h`).diagnostics.map((each) => each.code)).toEqual(['DW111']);
  });

  test('months are twelve', () => {
    expect(MONTH_NAMES).toHaveLength(12);
  });
});
