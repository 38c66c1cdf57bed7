import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { playground } from '../../../.scripts/pages.mjs';
import { deskOf } from '../../../src/adapters/page/playground/open-files.js';
import { withDesk } from '../../../src/adapters/page/playground/with-desk.js';
import { axeProblems, openWorkshop, type Workshop } from './open-page.js';

let workshop: Workshop;
let url = '';
let html = '';

beforeAll(async () => {
  workshop = await openWorkshop();
  html = await playground();
  writeFileSync(`${workshop.folder}playground.html`, html);
  url = pathToFileURL(`${workshop.folder}playground.html`).href;
}, 60_000);

afterAll(() => workshop.close());

/** The page, once it has answered and checked its sample. */
async function opened(options = {}): Promise<{ page: Page; asked: readonly string[]; errors: readonly string[] }> {
  const made = await workshop.open(url, { viewport: { width: 1440, height: 900 }, ...options });
  await made.page.waitForSelector('html[data-checked="0"] .row');
  return made;
}

const problems = (page: Page) => page.locator('#problem-count');
const row = (page: Page, title: string) => page.locator('.row', { hasText: title });

describe('the playground', () => {
  test('answers from disk, without a network, soon after it is opened', async () => {
    const { page, asked, errors } = await workshop.open(url, { viewport: { width: 1440, height: 900 } });
    await page.waitForSelector('.row');
    const first = await page.evaluate(() => performance.now());
    await page.waitForSelector('.why-headline');
    expect(await page.locator('.verdict-words').innerText()).toBe('Work due first.');
    await expect.poll(() => problems(page).innerText()).toBe('No problems');
    console.log(`playground: first answer after ${Math.round(first)} ms; ${html.length} bytes, ${gzipSync(html).length} gzipped`);
    // Goal: a second, on a machine that does nothing else. Held loosely here: eight may be at work on it.
    expect(first).toBeLessThan(8000);
    expect([asked, errors]).toEqual([[], []]);
    await page.context().close();
  });

  test('shows what an edit does: a mistake with its fix, and other due points', async () => {
    const { page, errors } = await opened();
    const times: number[] = [];
    await page.locator('.cm-content').click();
    const edit = async (from: string, to: string): Promise<void> => {
      const took = await page.evaluate(
        ([before = '', after = '']) =>
          new Promise<number>((resolve) => {
            const tile = (document.querySelector('.cm-content') as unknown as { cmTile: { view?: unknown; root?: { view: unknown } } })
              .cmTile;
            const view = (tile.view ?? tile.root?.view) as {
              state: { doc: { toString: () => string } };
              dispatch: (change: { changes: { from: number; to: number; insert: string } }) => void;
            };
            const at = view.state.doc.toString().indexOf(before);
            const begun = performance.now();
            new MutationObserver((_, observer) => {
              observer.disconnect();
              resolve(performance.now() - begun);
            }).observe(document.documentElement, { attributeFilter: ['data-checked'] });
            view.dispatch({ changes: { from: at, to: at + before.length, insert: after } });
          }),
        [from, to],
      );
      times.push(took);
    };
    await edit('every 100 h of engine or 12 months, whichever first', 'evry 100 h of engine or 12 months, whichever first');
    await expect.poll(() => problems(page).innerText()).toMatch(/error/);
    expect(await page.locator('#problems').innerText()).toMatch(/orchard-tractor\.due:\d+:\d+/);
    await expect.poll(() => page.locator('#verdict').innerText()).toContain('The text has errors');
    await page.locator('#problems .fix').first().click();
    await expect.poll(() => problems(page).innerText()).toBe('No problems');
    await expect.poll(() => page.locator('#verdict').innerText()).not.toContain('The text has errors');
    expect(await row(page, 'Change the engine oil and filter').innerText()).toContain('2.3 h past');
    await edit('every 100 h of engine or 12 months, whichever first', 'every 110 h of engine or 12 months, whichever first');
    await expect.poll(() => row(page, 'Change the engine oil and filter').innerText()).toContain('left');
    await edit('110 h of engine', '120 h of engine');
    await edit('120 h of engine', '130 h of engine');
    await edit('130 h of engine', '140 h of engine');
    const ordered = times.sort((a, b) => a - b);
    console.log(
      `playground: an edit shown after ${Math.round(ordered[Math.floor(ordered.length / 2)] ?? 0)} ms (median), ${Math.round(ordered.at(-1) ?? 0)} ms at most`,
    );
    expect(ordered[0]).toBeLessThan(3000);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  test('completes names as the language server does', async () => {
    const { page } = await opened();
    await page.locator('.cm-content').click();
    await page.keyboard.press('Control+End');
    await page.keyboard.type('\ntask look "Look"\n  every 10 h of eng');
    await page.waitForSelector('.cm-tooltip-autocomplete');
    expect(await page.locator('.cm-tooltip-autocomplete').innerText()).toContain('engine');
    await page.context().close();
  });

  test('slides over time and hours', async () => {
    const { page } = await opened();
    const overdue = page.locator('.group.overdue .row');
    await page
      .locator('.group summary')
      .evaluateAll((all) => all.forEach((each) => ((each.parentElement as HTMLDetailsElement).open = true)));
    const before = await overdue.count();
    await page.locator('#more').focus();
    await page.keyboard.press('End');
    await expect.poll(() => page.locator('#more-words').innerText()).toMatch(/^2700\.5 h: 500 h more than recorded$/);
    await expect.poll(() => overdue.count()).toBeGreaterThan(before);
    await page.getByLabel('keep up with the date').check();
    await page.locator('#when').focus();
    await page.keyboard.press('End');
    await expect.poll(() => page.locator('#when-date').inputValue()).toBe('2028-05-08');
    await expect.poll(() => page.locator('#more-words').innerText()).toMatch(/more than recorded$/);
    await page
      .locator('.group summary')
      .evaluateAll((all) => all.forEach((each) => ((each.parentElement as HTMLDetailsElement).open = true)));
    await expect.poll(() => overdue.count()).toBeGreaterThan(20);
    await page.context().close();
  });

  test('is used by keyboard alone: files, tasks, reasons, drawing, walk-round', async () => {
    const { page, errors } = await opened();
    await page.getByRole('tab', { name: 'orchard-tractor.due' }).focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => page.locator('.cm-content').getAttribute('aria-label')).toBe('Text of parts/three-cylinder-diesel.due');
    await row(page, 'Change the engine oil and filter').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.why-headline').innerText()).toContain('Change the engine oil and filter is due');
    await page.getByRole('tab', { name: 'Why' }).focus();
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('#detail svg[role=img]').getAttribute('aria-labelledby')).toContain('drawing-title');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('#detail').innerText()).toMatch(/come first\.[\s\S]*Fit both loader arm supports/);
    // Tab leaves the editor: nobody is caught in it.
    await page.locator('.cm-content').focus();
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.closest('#editor') === null)).toBe(true);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  test.each([
    ['light', 1440, 900, ['Why', 'Walk-round']],
    ['dark', 1280, 800, ['Rules drawn']],
    ['light', 390, 844, ['Why']],
  ] as const)('can be read by everybody: %s, %i wide', async (colorScheme, width, height, looks) => {
    const { page } = await opened({ colorScheme, viewport: { width, height }, reducedMotion: 'reduce' });
    for (const name of looks) {
      await page.getByRole('tab', { name }).click();
      expect(await axeProblems(page), name).toEqual([]);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    await page.context().close();
  });

  test('opens an author’s own files, and shows their words as words', async () => {
    const evil =
      'schedule mine "<img src=x onerror=alert(1)>"\n  language 1\n  edition 1 of 2026-01-01 by "Me"\n\nmeter engine "Meter" counts h\n\ntask look "<b>Look</b>"\n  every 10 h of engine\n';
    writeFileSync(
      `${workshop.folder}mine.html`,
      withDesk(html, { files: { 'mine.due': evil, 'mine.jsonl': '' }, main: 'mine.due', logbook: 'mine.jsonl' }),
    );
    const { page, errors } = await workshop.open(pathToFileURL(`${workshop.folder}mine.html`).href);
    await expect.poll(() => row(page, '<b>Look</b>').innerText()).toContain('<b>Look</b>');
    expect(await page.locator('img').count()).toBe(0);
    await page
      .locator('#own-files')
      .setInputFiles({ name: 'other.due', mimeType: 'text/plain', buffer: Buffer.from(evil.replace('<b>Look</b>', 'Other')) });
    await expect.poll(() => page.locator('.row-title').first().innerText()).toBe('Other');
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe('files that are opened', () => {
  const schedule = 'schedule saw "Saw"\n';

  test('a schedule takes the place of the one on the desk, and begins with an empty logbook', () => {
    expect(deskOf({ 'old.due': 'schedule old "Old"', 'old.jsonl': '{}' }, { 'saw.due': schedule })).toEqual({
      files: { 'saw.due': schedule, 'empty.jsonl': '' },
      main: 'saw.due',
      logbook: 'empty.jsonl',
    });
  });

  test('a logbook alone joins the schedule that is there', () => {
    expect(deskOf({ 'saw.due': schedule, 'old.jsonl': 'a' }, { 'new.jsonl': 'b' })).toEqual({
      files: { 'saw.due': schedule, 'new.jsonl': 'b' },
      main: 'saw.due',
      logbook: 'new.jsonl',
    });
  });

  test('what is neither is refused in words', () => {
    expect(deskOf({ 'saw.due': schedule }, { 'notes.txt': 'milk' })).toMatch(/^Choose a schedule/);
  });
});
