/**
 * Each hostile file ends, in words, within a generous bound; `node .scripts/hostile-report.mjs` measures time and memory.
 */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { scheduleFiles } from '../../src/adapters/cli/schedule-files.js';
import { serviceRecordPage } from '../../src/adapters/exchange/service-record-page.js';
import { serviceRecord } from '../../src/adapters/exchange/service-record.js';
import { fieldPage } from '../../src/adapters/page/field/field-page.js';
import { yearPage } from '../../src/adapters/page/year/year-page.js';
import { walkRound } from '../../src/access/plan-walk-round.js';
import { assess } from '../../src/assess/assess.js';
import type { Entry } from '../../src/history/entry.js';
import { lookAhead } from '../../src/outlook/look-ahead.js';
import { renderRuleGraphHtml } from '../../src/render/rule-graph-html.js';
import { renderWalkRoundHtml } from '../../src/render/walk-round/sheet-html.js';
import { compileFile } from '../support/compile-text.js';
import { moment } from '../support/history.js';
import { askEverything } from './ask-everything.js';
import { askDoor } from './doors.js';
import { hostileCases } from './hostile-cases.js';
import { steered } from './steered.js';

// eslint-disable-next-line no-control-regex -- control characters are what this is about
const STEERING = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/u;

describe('a hostile file ends in words', () => {
  test.each(hostileCases.map((each) => [each.name, each] as const))('%s', (_name, { make, says, asked, door }) => {
    const files = make();
    const start = performance.now();
    const ending = door === undefined ? askEverything(files, asked) : askDoor(door, files);
    expect(performance.now() - start).toBeLessThan(20_000);
    ending.proof?.();
    expect(ending.shown).not.toMatch(STEERING);
    if (says !== undefined) expect(ending.said.join(' ')).toContain(says);
  });
});

const header = 'language 1 edition 1 of 2026-01-01 by "B" fits model "M"';

test('`constructor` is a name like any other, whatever it names', () => {
  const n = 'constructor';
  const text = `schedule ${n} "T" ${header}
meter m-${n} "M" counts h  gauge ${n} "G" reads °C  duty ${n} "D"  event ${n}-e "E"  supply ${n} "S" each
position p-${n} ${n}, to-string  at rest p-${n} ${n}  place ${n} "P"
step ${n} "S" p-${n} ${n} to to-string
task ${n} "T" every 10 h of m-${n} in ${n} every 5 h of m-${n} with p-${n} to-string at ${n} uses 1 ${n} reads ${n} below 5 °C hold "H" from 5 °C fine
`;
  const logbook: readonly object[] = [
    { id: n, on: '2026-05-01', kind: 'done', tasks: [n], meters: { [`m-${n}`]: 10 }, readings: { [n]: 3 } },
    { id: '__proto__', on: '2026-05-02', kind: 'reading', meters: { [`m-${n}`]: 30 } },
    { id: 'toString', on: '2026-05-02', kind: 'reading', meters: { toString: 1, hasOwnProperty: 2 }, readings: { valueOf: 3 } },
  ];
  const { kind, shown } = askEverything({
    files: { 'schedule.due': text },
    logbook: logbook.map((line) => JSON.stringify(line)).join('\n'),
  });
  expect(kind, shown).toBe('answered');
  const graph = compileFile(text);
  const assessment = assess(graph, logbook as readonly Entry[], moment('2026-05-12'));
  expect(assessment.tasks[0]).toMatchObject({ task: n, state: 'overdue' });
  expect(JSON.parse(JSON.stringify(assessment.record))).toHaveProperty(n);
  expect(assessment.verdict).toBe('held');
});

test('an entry under the name `__proto__` reaches into nothing', () => {
  const line = '{"id":"a","on":"2026-05-01","kind":"reading","meters":{"__proto__":{"polluted":1}},"__proto__":{"polluted":1}}';
  const { said } = askEverything({ files: { 'schedule.due': `schedule t "T" ${header} task a "A" every 1 month` }, logbook: line });
  expect(said).toContain('unreadable');
  expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
});

test('no title, note or name becomes markup on a page', () => {
  const { graph, entries } = steered();
  const now = moment('2026-05-12');
  const pages = {
    rules: renderRuleGraphHtml(graph, 't'),
    sheet: renderWalkRoundHtml(walkRound(graph, ['t', 'u']), graph),
    record: serviceRecordPage(serviceRecord([{ from: null, graph }], entries, now)),
    year: yearPage(graph, entries, lookAhead(graph, entries, now)),
    field: fieldPage({ graph, entries, script: '' }),
  };
  for (const [name, page] of Object.entries(pages)) {
    expect(page, name).not.toContain('<script>alert');
    expect(page, name).not.toContain('<img');
    // eslint-disable-next-line no-control-regex -- control characters are what this is about
    expect(page.replace(/<script type="application[^]*?<\/script>/g, ''), name).not.toMatch(
      /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/,
    );
  }
});

describe('files that a schedule names', () => {
  const base = mkdtempSync(join(tmpdir(), 'duewright-hostile-'));
  afterAll(() => rmSync(base, { recursive: true }));
  const machine = join(base, 'machine');
  mkdirSync(machine);
  writeFileSync(join(base, 'secret.due'), 'secret');
  writeFileSync(join(machine, 'beside.due'), 'beside');
  writeFileSync(join(machine, 'large.due'), 'x'.repeat(5_000_000));
  symlinkSync(join(base, 'secret.due'), join(machine, 'link.due'));
  symlinkSync('../secret.due', join(machine, 'relative.due'));
  symlinkSync(base, join(machine, 'out'));
  symlinkSync('round.due', join(machine, 'round.due'));
  symlinkSync('/dev/zero', join(machine, 'zero.due'));
  symlinkSync('beside.due', join(machine, 'inside.due'));
  const { load } = scheduleFiles(join(machine, 'schedule.due'));

  test.each([
    '../secret.due',
    'link.due',
    'relative.due',
    'out/secret.due',
    'round.due',
    'zero.due',
    'large.due',
    '.',
    '',
    'a\0b',
    join(base, 'secret.due'),
  ])('%j is not opened', (path) => {
    expect(load(path)).toBeUndefined();
  });

  test('a link that stays in the folder is followed', () => {
    expect(load('inside.due')).toBe('beside');
  });
});
