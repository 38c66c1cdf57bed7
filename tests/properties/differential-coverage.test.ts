/** The schedules and histories on which the two evaluators are compared between them use every construct that a rule graph or a logbook can hold. */
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { anyCompiled } from './differential.js';
import { anyHistory } from './differential-history.js';
import { anySchedule } from './differential-schedule.js';
import { featuresIn, possibleFeatures, type Schema } from './graph-features.js';

function schemaOf(name: string): Schema {
  return JSON.parse(readFileSync(new URL(`../../grammar/${name}.schema.json`, import.meta.url), 'utf8')) as Schema;
}

const graphs = schemaOf('rule-graph');
const entries = schemaOf('history-entry');

/** Of these no state and no due point depends: words, what work takes, the way to it, and where a rule was written. */
const OF_NO_ACCOUNT =
  /^(Origin|Site|Under|Caution|RecordKept|Stance|Step|Never|Supply|Access)\b|^Task\.(uses|torques|record|reason|source|stance|site)|\.(origin|title|text)\b/;
const OF_NO_ACCOUNT_IN_ENTRIES = /\.(by|note|used|minutes|model|text|task|words|litres|supply)\b/;

/** Where states and due points come from. */
const PARTS = ['meters', 'gauges', 'dipsticks', 'duties', 'attachments', 'events', 'defects', 'stops', 'nodes', 'tasks'] as const;

const SAMPLE = { numRuns: 160, seed: 20_260_511 };

function partsOf(schema: Schema): readonly (readonly [(typeof PARTS)[number], Schema])[] {
  return PARTS.map((part) => {
    const found = schema.properties?.[part];
    if (found === undefined) throw new Error(`the schema has no ${part}`);
    return [part, found];
  });
}

const inGraphs = [...new Set(partsOf(graphs).flatMap(([part, schema]) => [...possibleFeatures(graphs, schema, part)]))].filter(
  (each) => !OF_NO_ACCOUNT.test(each),
);
const inEntries = [...possibleFeatures(entries, entries, 'entry')].filter((each) => !OF_NO_ACCOUNT_IN_ENTRIES.test(each));

describe('what the two evaluators are compared on', () => {
  test('uses every construct of a rule graph', { timeout: 60_000 }, () => {
    const seen = new Set(
      fc
        .sample(anyCompiled, SAMPLE)
        .flatMap(({ graph }) => partsOf(graphs).flatMap(([part, schema]) => featuresIn(graphs, schema, part, graph[part]))),
    );
    expect(inGraphs.filter((each) => !seen.has(each))).toEqual([]);
  });

  test('uses variants and parts', () => {
    const seen = fc.sample(anySchedule, SAMPLE).flatMap((files) => Object.values(files).map((text) => text.split(' ')[0]));
    expect([...new Set(seen)].sort()).toEqual(['part', 'schedule', 'variant']);
  });

  test('uses every kind of entry, with everything that an entry can note', () => {
    const seen = new Set(
      fc.sample(anyHistory, SAMPLE).flatMap((history) => history.flatMap((each) => featuresIn(entries, entries, 'entry', each))),
    );
    expect(inEntries.filter((each) => !seen.has(each))).toEqual([]);
  });

  test('is measured against more than a handful of constructs', () => {
    expect(inGraphs.length).toBeGreaterThan(150);
    expect(inGraphs).toContain('RecentNode.what(happened)');
    expect(inGraphs).toContain('Counting = due-within-allowance');
    expect(inEntries).toContain('entry(outing).untilOn');
  });
});
