/** Situations that once broke a property of explanations: each keeps all of them now. `found/` is added to from `npm run test:wide`. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { AssessOptions } from '../../src/assess/assessment.js';
import type { Entry } from '../../src/history/entry.js';
import type { Moment } from '../../src/values/moment.js';
import { PROPERTIES } from './replay.js';
import { compiled } from './situation.js';

/** A situation as it was found, and what was said of it then. */
interface Found {
  readonly property: keyof typeof PROPERTIES;
  readonly said: readonly string[];
  readonly text: string;
  readonly entries: readonly Entry[];
  readonly now: Moment;
  readonly options: AssessOptions;
}

const folder = new URL('found/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.json'));

describe.each(files)('%s', (file) => {
  const found = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as Found;
  const graph = compiled(found.text);

  test.each(Object.entries(PROPERTIES))('is %s', (_, faultsOf) => {
    if (graph === null) throw new Error('its schedule does not compile any more');
    const shuffled = [...found.entries].reverse();
    expect(faultsOf({ each: { ...found, graph }, shuffled })).toEqual([]);
  });

  test('was found for a reason', () => {
    expect(Object.keys(PROPERTIES)).toContain(found.property);
    expect(found.said).not.toEqual([]);
  });
});
