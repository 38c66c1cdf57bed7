import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readLogbook } from '../../src/adapters/logbook/read-logbook.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { moment } from '../support/history.js';
import { dueTable } from './due-table.js';
import { graphOfSchedule, textOf } from './schedule-files.js';

const machines = ['orchard-tractor', 'wood-chipper', 'irrigation-pump'] as const;

describe('the logbooks of the repository', () => {
  it.each(machines)('%s: every line is an entry, and every id stands once', (name) => {
    const { entries, problems } = readLogbook(textOf(`${name}.logbook.jsonl`));
    expect(problems).toEqual([]);
    expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length);
    expect(entries.length).toBeGreaterThan(200);
  });

  it.each(machines)('%s: covers two years, and names nothing that the schedule does not have', (name) => {
    const { entries } = readLogbook(textOf(`${name}.logbook.jsonl`));
    const timeline = readTimeline(entries, graphOfSchedule(`${name}.due`), moment('2026-05-11'));
    expect(timeline.strays).toEqual([]);
    const days = entries.map(({ on }) => on).sort();
    expect(moment(days.at(-1) ?? '').day - moment(days[0] ?? '').day).toBeGreaterThan(730);
  });

  it.each([
    ['orchard-tractor', '2026-05-11', {}],
    ['orchard-tractor', '2026-05-11 07:30', { outing: { hours: 4, duties: ['tall-growth'], attachments: ['flail-mower'] } }],
    ['wood-chipper', '2026-05-11', {}],
    ['irrigation-pump', '2026-05-11', {}],
  ] as const)('%s at %s stands as its golden table says', (name, now, intent) => {
    const { entries } = readLogbook(textOf(`${name}.logbook.jsonl`));
    const file = new URL(`golden/${name}${'outing' in intent ? '-before-mowing' : ''}.txt`, import.meta.url);
    expect(dueTable(graphOfSchedule(`${name}.due`), entries, now, intent)).toBe(readFileSync(file, 'utf8'));
  });

  it('the order of the lines does not matter', () => {
    const { entries } = readLogbook(textOf('orchard-tractor.logbook.jsonl'));
    const graph = graphOfSchedule('orchard-tractor.due');
    expect(dueTable(graph, entries.toReversed(), '2026-05-11')).toBe(dueTable(graph, entries, '2026-05-11'));
  });
});
