import { rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type * as Engine from '../../src/engine.js';
import type * as Whole from '../../src/index.js';
import { library } from '../../.scripts/bundles.mjs';

const outdir = fileURLToPath(new URL(`../../node_modules/.cache/duewright-library-${process.pid}/`, import.meta.url));
beforeAll(async () => {
  await build({ ...library, outdir });
  writeFileSync(`${outdir}package.json`, '{ "type": "module" }\n');
});
afterAll(() => rmSync(outdir, { recursive: true, force: true }));

test('the published entries compile, assess and explain', async () => {
  const whole = (await import(`${outdir}index.js`)) as typeof Whole;
  const engine = (await import(`${outdir}engine.js`)) as typeof Engine;
  const text = 'schedule pump "Pump"\n  language 1\nmeter engine "Hours" counts h\ntask oil "Change the oil"\n  every 50 h of engine\n';
  const { graph, diagnostics } = whole.compile('pump.due', (path) => (path === 'pump.due' ? text : undefined));
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  if (graph === null) throw new Error('the schedule did not compile');

  const read = engine.readRuleGraph(JSON.stringify(graph));
  if (!read.ok) throw new Error(read.problem);
  const entries = [
    { id: 'a', kind: 'done', on: '2026-01-01', tasks: ['oil'], meters: { engine: 10 } },
    { id: 'b', kind: 'reading', on: '2026-02-01', meters: { engine: 60 } },
  ] as const;
  const day = engine.dayOf('2026-02-01');
  if (day === null) throw new Error('no such day');
  const history = structuredClone(entries) as unknown as Engine.Entry[];
  const assessment = engine.assess(read.graph, history, { day, minute: null });
  expect(assessment.tasks.map(({ task, state }) => [task, state])).toEqual([['oil', 'due']]);
  expect(engine.explain(read.graph, assessment, history, 'oil').entries.map(({ id }) => id)).toEqual(['a', 'b']);
});

test('importing does nothing', async () => {
  const before = Object.keys(globalThis);
  await import(`${outdir}engine.js`);
  expect(Object.keys(globalThis)).toEqual(before);
});
