import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { check } from '../../src/check/check.js';

const folder = new URL('../../schedules/', import.meta.url);
const first = 'orchard-tractor.due';
const load = (path: string): string => readFileSync(new URL(path, folder), 'utf8');
const letters = 'abcdefghijklmnopqrstuvwxyz';

/** One slip of the keyboard at a place: a letter left out, doubled, changed, or swapped with the next. */
const slips: readonly ((name: string, at: number) => string)[] = [
  (name, at) => name.slice(0, at) + name.slice(at + 1),
  (name, at) => name.slice(0, at) + name.charAt(at) + name.slice(at),
  (name, at) => name.slice(0, at) + letters.charAt((letters.indexOf(name.charAt(at)) + 7) % 26) + name.slice(at + 1),
  (name, at) => name.slice(0, at) + name.charAt(at + 1) + name.charAt(at) + name.slice(at + 2),
];

test('of the misspellings of names used in a real schedule, 95 in 100 get the right name first', () => {
  const text = load(first);
  const { model } = check(first, load);
  const uses = (model?.references ?? []).filter(
    ({ name, definition }) => name.at.file === 0 && definition !== undefined && name.text.length > 3,
  );
  let tried = 0;
  let right = 0;
  // Every twenty-third use, each slip at one place that depends on the use: a fixed, spread sample.
  for (const [index, { name }] of uses.entries()) {
    if (index % 23 !== 0) continue;
    const slip = slips[(index / 23) % slips.length];
    const at = 1 + (index % Math.max(1, name.text.length - 2));
    const wrong = slip?.(name.text, at) ?? '';
    if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(wrong) || wrong === name.text) continue;
    const edited = text.slice(0, name.at.start) + wrong + text.slice(name.at.end);
    const told = check(first, (path) => (path === first ? edited : load(path))).diagnostics.find(
      ({ at: place }) => place.file === 0 && place.start === name.at.start,
    );
    // A slip may give a word of the language, which the parser tells.
    if (told?.code !== 'DW220') continue;
    tried += 1;
    if (told.fixes[0]?.edits[0]?.text === name.text) right += 1;
  }
  expect(tried).toBeGreaterThan(30);
  expect(right / tried).toBeGreaterThanOrEqual(0.95);
});
