import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { check } from '../../src/check/check.js';
import { LiveCheck } from '../../src/check/live-check.js';
import { edited, edits } from '../editor/random-edits.js';
import { thousandTasks } from '../editor/thousand-tasks.js';

const tractor = ['orchard-tractor.due', 'parts/three-cylinder-diesel.due', 'attachments/flail-mower.due', 'attachments/pallet-forks.due'];
const machines: readonly Readonly<Record<string, string>>[] = [
  { 'orchard-tractor-narrow.due': read('orchard-tractor-narrow.due'), ...Object.fromEntries(tractor.map((path) => [path, read(path)])) },
  { 'wood-chipper.due': read('wood-chipper.due') },
  { 'long.due': thousandTasks(40) },
];

function read(path: string): string {
  return readFileSync(`schedules/${path}`, 'utf8');
}

/** Edits, each with a share of the files that says in which of them. */
const courses = fc.tuple(edits(8), fc.array(fc.double({ min: 0, max: 0.999, noNaN: true }), { minLength: 8, maxLength: 8 }));

test('after any course of edits, in any of its files, a schedule that was followed is judged as one that is seen for the first time', () => {
  fc.assert(
    fc.property(fc.constantFrom(...machines), courses, (machine, [course, where]) => {
      const live = new LiveCheck();
      const files = new Map(Object.entries(machine));
      const [main = ''] = files.keys();
      const load = (path: string): string | undefined => files.get(path);
      live.check(main, load);
      course.forEach((edit, index) => {
        const path = [...files.keys()][Math.floor((where[index] ?? 0) * files.size)] ?? main;
        files.set(path, edited(files.get(path) ?? '', edit));
        const [followed, anew] = [live.check(main, load), check(main, load)];
        expect(followed.diagnostics).toEqual(anew.diagnostics);
        expect(followed.model?.declarations).toEqual(anew.model?.declarations);
        expect(followed.model?.references).toEqual(anew.model?.references);
        expect([...(followed.model?.meaning ?? [])]).toEqual([...(anew.model?.meaning ?? [])]);
      });
    }),
    { numRuns: 12 },
  );
});
