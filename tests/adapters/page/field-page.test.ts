import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildCommand } from '../../../.scripts/bundles.mjs';
import { fieldBundle, fieldScript } from '../../../.scripts/pages.mjs';
import { readLogbook } from '../../../src/adapters/logbook/read-logbook.js';
import { axeProblems, openWorkshop, type Workshop } from './open-page.js';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const schedule = `${root}schedules/orchard-tractor.due`;
const logbook = `${root}schedules/orchard-tractor.logbook.jsonl`;
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

let workshop: Workshop;
let url = '';
let run: (...args: readonly string[]) => { readonly code: number | null; readonly out: string; readonly err: string };

/** The command as it is published, with the pages beside it; and from it, a page. */
beforeAll(async () => {
  workshop = await openWorkshop();
  const { folder } = workshop;
  mkdirSync(`${folder}pages`);
  const [script] = await Promise.all([fieldScript(), buildCommand(`${folder}cli/`)]);
  writeFileSync(`${folder}pages/field-page.js`, script);
  run = (...args) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [`${folder}cli/duewright.js`, ...args], {
      encoding: 'utf8',
      cwd: folder,
      env: { ...process.env, DUEWRIGHT_CACHE: '' },
    });
    return { code: status, out: stdout, err: stderr };
  };
  expect(run('field-page', schedule, logbook, '--to', `${folder}tractor.html`)).toMatchObject({ code: 0, out: '' });
  url = pathToFileURL(`${folder}tractor.html`).href;
}, 60_000);

afterAll(() => workshop.close());

/** The page on a phone, on the morning of 11 May 2026. */
async function onThePhone(at = '2026-05-11T07:30:00'): Promise<{ page: Page; asked: readonly string[]; errors: readonly string[] }> {
  return workshop.open(url, phone, async (page) => page.clock.install({ time: new Date(at) }));
}

const tab = (page: Page, name: string) => page.getByRole('navigation').getByRole('button', { name });

describe('the field page', () => {
  test('says without a network what is due and why, cautions first', async () => {
    const { page, asked, errors } = await onThePhone();
    await expect.poll(() => page.locator('.verdict').innerText()).toBe('Work due first.');
    // The same as `duewright due`: tests/schedules/golden/ holds the states on this day.
    const title = 'Change the engine oil and filter';
    await page.locator('summary', { hasText: title }).tap();
    const why = page.locator('.why', { hasText: title });
    expect(await why.locator('.why-headline').innerText()).toContain('102.3 %');
    expect(await why.innerText()).toMatch(/come first\.[\s\S]*CAUTION[\s\S]*Run the engine warm first/);
    expect(asked).toEqual([]);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  test('is made for gloves, sunlight and screen readers on every screen', async () => {
    const { page } = await onThePhone();
    for (const name of ['Due', 'Walk-round', 'Timer', 'Write', 'Hand over']) {
      await tab(page, name).tap();
      const small = await page.evaluate(() =>
        [...document.querySelectorAll('button,summary,select,label.tick,input:not([type=checkbox])')]
          .filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 48)
          .map((each) => each.outerHTML.slice(0, 120)),
      );
      expect(small, name).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${name} fits the phone`).toBe(true);
    }
    // All screens at once: axe takes its time.
    await page.evaluate(() => document.querySelectorAll<HTMLElement>('section.screen').forEach((screen) => (screen.hidden = false)));
    expect(await axeProblems(page, ['color-contrast-enhanced', 'target-size'])).toEqual([]);
    await page.context().close();
  });

  test('hands back what was written, and it merges without loss', async () => {
    const { page } = await onThePhone();
    await tab(page, 'Write').tap();
    await page.getByLabel('Hour meter (h)').last().fill('2201,5');
    await page.getByRole('button', { name: 'Keep it' }).tap();
    await expect.poll(() => page.locator('#waiting').innerText()).toBe('1 not yet handed over');
    await page.getByRole('button', { name: 'Finding' }).tap();
    await page.getByLabel('In words').fill('<img src=x onerror=alert(1)> a nest in the cab');
    await page.getByRole('button', { name: 'Keep it' }).tap();
    await page.getByRole('button', { name: 'Top-up' }).tap();
    await page.getByLabel('Measured by').selectOption('engine-oil');
    await page.getByLabel('Litres').fill('0.4');
    await page.getByRole('button', { name: 'Keep it' }).tap();
    // A page that is closed and opened again has lost nothing.
    await page.reload();
    expect(await page.locator('#waiting').innerText()).toBe('3 not yet handed over');
    await tab(page, 'Hand over').tap();
    expect(await page.locator('.waiting').innerText()).toContain('<img src=x');
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save as a file' }).tap()]);
    expect(await page.locator('#waiting').innerText(), 'saving is not arriving').toBe('3 not yet handed over');
    const handed = `${workshop.folder}handed.jsonl`;
    await download.saveAs(handed);
    const entries = readLogbook(readFileSync(handed, 'utf8')).entries;
    expect(entries.map(({ kind }) => kind)).toEqual(['reading', 'finding', 'topped-up']);
    expect(entries[0]).toMatchObject({ on: '2026-05-11', at: '07:30', meters: { engine: 2201.5 } });
    expect(new Set(entries.map(({ id }) => id)).size).toBe(3);
    const mine = `${workshop.folder}mine.jsonl`;
    copyFileSync(logbook, mine);
    expect(run('merge', mine, handed)).toMatchObject({ code: 0, out: '3 appended; 669 entries now.\n' });
    expect(run('merge', mine, handed), 'handing over twice does no harm').toMatchObject({
      code: 0,
      out: 'Nothing appended; 669 entries now.\n',
    });
    await page.getByRole('button', { name: /have arrived/ }).tap();
    expect(await page.locator('#waiting').innerText()).toBe('Nothing to hand over');
    // The entries still count on this device, whose page has the older logbook.
    await tab(page, 'Write').tap();
    expect(await page.getByLabel('Hour meter (h)').last().getAttribute('placeholder')).toBe('last 2201.5');
    await page.context().close();
  });

  test('takes down what happened, of what can happen to the machine as it stands', async () => {
    const { page } = await onThePhone();
    await tab(page, 'Write').tap();
    await page.getByRole('button', { name: 'Happening' }).tap();
    const what = page.getByLabel('What happened');
    const offered = await what.locator('option').allInnerTexts();
    expect(offered).toContain('The axles stood in water above the hubs');
    expect(offered.filter((each) => each.startsWith('Mended'))).toEqual(['Mended: Seep at a hydraulic fitting', 'Mended: Cut in a tyre']);
    await page.getByRole('button', { name: 'Keep it' }).tap();
    expect(await page.locator('#write .said').innerText()).toBe('Choose what happened.');
    await what.selectOption({ label: 'Mended: Cut in a tyre' });
    await page.getByRole('button', { name: 'Keep it' }).tap();
    expect(await what.locator('option').allInnerTexts(), 'what was mended is not offered again').not.toContain('Mended: Cut in a tyre');
    await what.selectOption({ label: 'Put into storage' });
    await page.getByRole('button', { name: 'Keep it' }).tap();
    expect(await what.locator('option').allInnerTexts()).toContain('Taken out of storage');
    await page.context().close();
  });

  test('leads round by keyboard, tells what a reading means at once, and writes down how the machine was left', async () => {
    const { page, errors } = await onThePhone();
    await tab(page, 'Walk-round').focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Walk-round');
    const block = page.locator('.line').filter({ has: page.locator('.tick', { hasText: 'Fit both loader arm supports' }) });
    expect(await block.innerText(), 'the caution stands before the line').toMatch(
      /^\s*⚠?\uFE0E?\s*DANGER[\s\S]*Fit both loader arm supports/,
    );
    const oil = page.locator('.line').filter({ has: page.locator('.tick', { hasText: 'Check the hydraulic oil level' }) });
    await oil.getByLabel(/Hydraulic oil dipstick/).selectOption('below-low');
    expect(await oil.innerText()).toContain('HOLD: Do not work: the pump draws air.');
    await oil.getByLabel(/Hydraulic oil dipstick/).selectOption('0.5');
    expect(await oil.innerText()).not.toContain('HOLD');
    const number = Number((await block.locator('.line-number').innerText()).replace('.', ''));
    for (let line = 1; line <= number; line += 1) {
      await page
        .locator('.line input[type=checkbox]')
        .nth(line - 1)
        .focus();
      await page.keyboard.press('Space');
    }
    // Half way round the page is closed, and opened again.
    await page.reload();
    await tab(page, 'Walk-round').tap();
    expect(await page.locator('.line[data-ticked]').count()).toBe(number);
    await page.getByRole('button', { name: 'Write down what is ticked' }).tap();
    await tab(page, 'Hand over').tap();
    const waiting = await page.locator('.waiting').innerText();
    expect(waiting).toMatch(/Done:.*check the hydraulic oil level/i);
    expect(waiting).toMatch(/Left standing:.*loader blocked/);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  test('counts down to the checks that fall due while working', async () => {
    const { page } = await onThePhone();
    await page.locator('.plan summary').first().tap();
    await page.getByText('Mowing growth above knee height').tap();
    await tab(page, 'Timer').tap();
    await page.getByRole('button', { name: 'Start work now' }).tap();
    // Every 30 min of work in tall growth (the schedule's own rule).
    await expect.poll(() => page.locator('#timer .big').innerText()).toBe('Next, at 08:00: Clean the radiator screen');
    expect(await page.locator('.countdown').innerText()).toMatch(/^(30:00|29:5\d)$/);
    await page.clock.fastForward('30:01');
    await expect.poll(() => page.locator('.due-now').innerText()).toContain('Due now: Clean the radiator screen');
    expect(await page.locator('.due-now').innerText(), 'cautions first').toMatch(/^\s*DANGER[\s\S]*Due now/);
    await page.getByRole('button', { name: 'Done: Clean the radiator screen' }).tap();
    await expect.poll(() => page.locator('#timer .big').innerText()).toBe('Next, at 08:30: Clean the radiator screen');
    await page.getByRole('button', { name: /Work has ended/ }).tap();
    await tab(page, 'Hand over').tap();
    expect(await page.locator('.waiting').innerText()).toMatch(
      /At work 07:30 to 08:00, in mowing growth above knee height, with the Sedge/,
    );
    await page.context().close();
  });

  test('prints what is due and the walk-round, and nothing to press', async () => {
    const { page } = await onThePhone();
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    for (const part of ['#due', '#walk .line >> nth=0']) expect(await page.locator(part).isVisible(), part).toBe(true);
    for (const part of ['#tabs', '#timer', '#write', '#hand-over', '#waiting'])
      expect(await page.locator(part).isVisible(), part).toBe(false);
    await page.context().close();
  });

  test('lets nothing of a schedule or a logbook become more than words', async () => {
    const evil = `${workshop.folder}evil.due`;
    const text = readFileSync(`${root}tests/cases/cli/files/water-pump.due`, 'utf8');
    writeFileSync(
      evil,
      text.replaceAll(/task change-engine-oil "[^"]*"/g, 'task change-engine-oil "</script><img src=x onerror=document.title=1>"'),
    );
    const entries = `${workshop.folder}evil.jsonl`;
    writeFileSync(
      entries,
      `${JSON.stringify({ kind: 'finding', id: 'e', on: '2026-05-01', text: '<!--<script></script><script>document.title=2</script>' })}\n`,
    );
    expect(run('field-page', evil, entries, '--to', `${workshop.folder}evil.html`)).toMatchObject({ code: 0 });
    const { page, errors } = await workshop.open(pathToFileURL(`${workshop.folder}evil.html`).href, phone);
    await expect.poll(() => page.locator('body').innerText()).toContain('</script><img src=x onerror=document.title=1>');
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.title()).not.toMatch(/^[12]$/);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

test('the engine in the page has no parser, and its size is told', async () => {
  const { inputs, text } = await fieldBundle();
  expect(inputs).toContain('src/assess/assess.ts');
  expect(inputs.filter((path) => /chevrotain|codemirror|^src\/(syntax|check|compile|format|editor)\//.test(path))).toEqual([]);
  const size = gzipSync(text).length;
  console.log(
    `field page: script ${text.length} bytes, ${size} gzipped; with the tractor's logbook ${readFileSync(`${workshop.folder}tractor.html`).length} bytes`,
  );
  expect(size).toBeLessThan(120_000);
});
