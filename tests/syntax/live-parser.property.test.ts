import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LiveParser } from '../../src/syntax/live-parser.js';
import { parse } from '../../src/syntax/parse.js';
import { edited, edits } from '../editor/random-edits.js';
import { thousandTasks } from '../editor/thousand-tasks.js';

const texts = ['schedules/wood-chipper.due', 'schedules/irrigation-pump.due', 'schedules/attachments/flail-mower.due'].map((path) =>
  readFileSync(path, 'utf8'),
);

test('after any course of edits a text that was followed reads as one that is read for the first time', () => {
  fc.assert(
    fc.property(fc.constantFrom(...texts, thousandTasks(20)), edits(12), (start, course) => {
      const live = new LiveParser();
      let text = start;
      live.parse(text);
      for (const edit of course) {
        text = edited(text, edit);
        expect(live.parse(text)).toEqual(parse(text));
      }
    }),
    { numRuns: 60 },
  );
});

test('an edit leaves the nodes of all other declarations the same objects', () => {
  const live = new LiveParser();
  const text = thousandTasks(40);
  const before = live.parse(text).file?.declarations ?? [];
  const after = live.parse(text.replace('Work number 12"', 'Work number twelve"')).file?.declarations ?? [];
  expect(after).toHaveLength(before.length);
  expect(after.filter((node, index) => node !== before[index]).map((node) => node.kind === 'task' && node.name.text)).toEqual(['task-12']);
});
