import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { lookAhead } from '../../../../src/ahead.js';
import { compileFile } from '../../../../src/adapters/cli/compile-file.js';
import { readLogbookBytes } from '../../../../src/adapters/logbook/read-logbook.js';
import { yearPage } from '../../../../src/adapters/page/year/year-page.js';
import type { Entry, RuleGraph } from '../../../../src/engine.js';
import { root } from '../../cli/built-command.js';
import { compileText } from '../../../support/compile-text.js';
import { history, meters, moment } from '../../../support/history.js';

const NOW = moment('2026-05-11');

let folder = '';
let browser: Browser;
let page: Page;
let html = '';
let graph: RuleGraph;
let entries: readonly Entry[];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'duewright-year-'));
  const compiled = await compileFile(`${root}schedules/orchard-tractor.due`);
  if (!compiled.ok || compiled.value.graph === null) throw new Error('the example does not compile');
  graph = compiled.value.graph;
  ({ entries } = readLogbookBytes(readFileSync(`${root}schedules/orchard-tractor.logbook.jsonl`)));
  html = yearPage(graph, entries, lookAhead(graph, entries, NOW));
  const file = join(folder, 'year.html');
  writeFileSync(file, html);
  // Chromium's own sandbox cannot be had by root in a container; what is opened is our own page.
  browser = await chromium.launch({ executablePath: process.env['CHROMIUM'] ?? '', args: ['--no-sandbox'] });
  page = await (await browser.newContext({ offline: true, viewport: { width: 1180, height: 900 } })).newPage();
  await page.goto(pathToFileURL(file).href);
}, 60_000);

afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the year page', () => {
  test('opens from disk, asks for nothing from anywhere, and holds no script', async () => {
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.reload();
    expect(asked.filter((url) => !url.startsWith('file:'))).toEqual([]);
    expect(html).not.toContain('<script');
    expect(await page.locator('svg.drawing').count()).toBe(5);
  });

  test('can be read by those who use a screen reader, tables opened', async () => {
    await page.locator('details').evaluateAll((all) => all.forEach((each) => each.setAttribute('open', '')));
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)).toEqual([]);
  });

  test('shows the same tasks in the drawing and in the table', async () => {
    const drawn = await page.locator('svg[aria-labelledby^="year-"] text').allTextContents();
    const listed = await page.locator('table').first().locator('tbody th').allTextContents();
    expect(listed.length).toBeGreaterThan(30);
    for (const title of listed) expect(drawn).toContain(title);
  });

  test('names every drawing, each id once', async () => {
    const ids = await page.locator('[id]').evaluateAll((all) => all.map((each) => each.id));
    expect(new Set(ids).size).toBe(ids.length);
    for (const svg of await page.locator('svg.drawing').all()) expect(await svg.locator('> title').textContent()).not.toBe('');
  });

  test('no words run into each other or over the edge of a drawing', async () => {
    const clashes = await page.locator('svg.drawing').evaluateAll((drawings) =>
      drawings.flatMap((drawing) => {
        const edge = drawing.getBoundingClientRect();
        const boxes = [...drawing.querySelectorAll('text')].map((text) => ({
          words: text.firstChild?.textContent ?? '',
          box: text.getBoundingClientRect(),
        }));
        const over = boxes
          .filter(({ box }) => box.right > edge.right + 2 || box.left < edge.left - 2)
          .map(({ words }) => `over the edge: ${words}`);
        const clash = boxes.flatMap((a, index) =>
          boxes
            .slice(index + 1)
            .filter(
              (b) =>
                Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left) > 2 &&
                Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top) > 5,
            )
            .map((b) => `${a.words} / ${b.words}`),
        );
        return [...over, ...clash];
      }),
    );
    expect(clashes).toEqual([]);
  });

  test('prints on two pages, A4 across', async () => {
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect([...pdf.matchAll(/\/Type\s*\/Page\b(?!s)/g)]).toHaveLength(2);
    const [, width = '0', height = '0'] = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf) ?? [];
    expect([Math.round(Number(width)), Math.round(Number(height))]).toEqual([842, 595]);
  });

  test('fits a narrow screen: only the wide drawings scroll, and by the keyboard too', async () => {
    await page.setViewportSize({ width: 390, height: 800 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    expect(await page.locator('.wide:not([tabindex="0"])').count()).toBe(0);
  });

  test('the inks that lie on each other can be told apart in grey', () => {
    const inks = [...new Set(html.match(/#[0-9a-f]{6}/g))];
    expect(inks.length).toBeGreaterThan(4);
    const apart = (a: string, b: string): number => contrast(luminance(a), luminance(b));
    // The mark on its bar, the bar on a striped row, the level on its ground.
    expect(apart('#1d4e6f', '#aabdcb')).toBeGreaterThan(3);
    expect(apart('#aabdcb', '#e9eef2')).toBeGreaterThan(1.5);
    expect(apart('#1d4e6f', '#e9eef2')).toBeGreaterThan(4.5);
    for (const ink of ['#1d4e6f', '#aabdcb', '#e9eef2']) expect(inks).toContain(ink);
  });

  test('the same inputs give the same bytes', () => {
    expect(yearPage(graph, entries, lookAhead(graph, entries, NOW))).toBe(html);
  });
});

describe('a page with little to show', () => {
  const small = compileText(`
    meter engine "Hours <script>alert(1)</script>" counts h
    dipstick oil "Oil & more" low to full is 1 L
    supply filter "Filter" each
    task change-it "Change <b>it</b>" every 50 h of engine uses 1 filter
    task daily "Daily" before each day's work
  `);

  test('nothing on record: says so, draws nothing that it does not know', () => {
    const bare = yearPage(small, [], lookAhead(small, [], NOW));
    expect(bare).toContain('The meter was never read.');
    expect(bare).toContain('Fewer than two levels are on record.');
    expect(bare).toContain('never recorded');
  });

  test('every text from outside is escaped, in words and in drawings', () => {
    const read = history(['2026-01-01', meters({ engine: 1 })], ['2026-05-01', meters({ engine: 60 })]);
    const bare = yearPage(small, read, lookAhead(small, read, NOW));
    expect(bare).not.toMatch(/<script|<b>/);
    expect(bare).toContain('Change &lt;b&gt;it&lt;/b&gt;');
  });
});

/** Relative luminance and contrast as in WCAG 2.2. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.040_45 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: number, b: number): number {
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}
