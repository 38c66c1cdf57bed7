/**
 * What an author sees of schedules that would lead someone into trouble, and the sheets that owners get.
 *
 * `UPDATE_CASES=1 npx vitest run --config tests/vitest.config.ts tests/access/cases` writes what is now shown; read it before committing it.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { walkRound } from '../../src/access/plan-walk-round.js';
import { compile } from '../../src/compile/compile.js';
import { accessCatalogue } from '../../src/diagnostics/catalogue/access.js';
import { renderDiagnostics } from '../../src/render/diagnostics.js';
import { plainStyle } from '../../src/render/style.js';
import { renderWalkRound } from '../../src/render/walk-round/sheet-text.js';
import { renderWalkRoundHtml } from '../../src/render/walk-round/sheet-html.js';
import { scheduleGraph } from './schedule-graph.js';
import { rounds } from './rounds.js';

const folder = new URL('../cases/access/', import.meta.url);
const updating = process.env['UPDATE_CASES'] === '1';
const names = readdirSync(folder).filter((name) => name.endsWith('.txt'));

function read(name: string): { path: string; text: string; head: string; expected: string } {
  const whole = readFileSync(new URL(name, folder), 'utf8');
  const [head = '', expected = ''] = whole.split(/^==>\n/m);
  const path = /^--- (\S+)$/m.exec(head)?.[1] ?? '';
  return { path, text: head.slice(head.indexOf('---')).replace(/^--- \S+\n/, ''), head, expected };
}

describe('schedules that are refused, with their counterexample', () => {
  test.each(names)('%s', (name) => {
    const { path, text, head, expected } = read(name);
    const { diagnostics, sources } = compile(path, (wanted) => (wanted === path ? text : undefined));
    const shown = `${renderDiagnostics(diagnostics, sources, plainStyle(140))}\n`;
    if (updating) writeFileSync(new URL(name, folder), `${head}==>\n${shown}`);
    else expect(shown).toBe(expected);
    expect(shown).toMatch(/DW4\d\d/);
  });

  test('every code of the area has a case', () => {
    const seen = new Set(names.flatMap((name) => [...read(name).expected.matchAll(/(DW4\d\d):/g)].map((match) => match[1])));
    expect([...seen].sort()).toEqual(
      Object.values(accessCatalogue)
        .map(({ code }) => code)
        .sort(),
    );
  });
});

describe('walk-rounds of the example machines', () => {
  test.each(rounds.map((round) => [round.name, round] as const))('%s', async (name, { schedule, tasks, options }) => {
    const graph = scheduleGraph(schedule);
    const walk = walkRound(graph, tasks, options);
    expect(walk.outcome).toBe('found');
    expect(walk.proof?.kind).toBe('optimal');
    await expect(`${renderWalkRound(walk, graph, plainStyle(100))}\n`).toMatchFileSnapshot(`../cases/walk-round/${name}.txt`);
    const html = renderWalkRoundHtml(walk, graph);
    // Whoever reads the sheet meets the deference before the first line, and each caution before its line.
    expect(html.indexOf('own manual')).toBeLessThan(html.indexOf('<li'));
    for (const line of html.split('\n').filter((each) => each.startsWith('<li'))) {
      if (line.includes('class="caution ')) expect(line.indexOf('class="caution ')).toBeLessThan(line.indexOf('<label'));
    }
  });
});
