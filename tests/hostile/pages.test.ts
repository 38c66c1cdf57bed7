/**
 * Hostile titles and notes in a browser: the field page and the playground show them as text, and nothing of them runs.
 */
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fieldScript, playground } from '../../.scripts/pages.mjs';
import { fieldPage } from '../../src/adapters/page/field/field-page.js';
import { withDesk } from '../../src/adapters/page/playground/with-desk.js';
import { openWorkshop, type Workshop } from '../adapters/page/open-page.js';
import { MARKUP, STEER, steered } from './steered.js';

// eslint-disable-next-line no-control-regex -- control characters are what this is about
const STEERING = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/u;

let workshop: Workshop;
beforeAll(async () => {
  workshop = await openWorkshop();
}, 60_000);
afterAll(() => workshop.close());

async function opened(name: string, html: string, before?: (page: Page) => Promise<void>): ReturnType<Workshop['open']> {
  writeFileSync(`${workshop.folder}${name}.html`, html);
  return workshop.open(pathToFileURL(`${workshop.folder}${name}.html`).href, { viewport: { width: 1440, height: 900 } }, before);
}

/** What of the hostile words became more than words. */
function harm(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => [
    ...('hurt' in globalThis ? ['a script ran'] : []),
    ...[...document.querySelectorAll('img, iframe, object, embed, link[href], base, form[action]')].map((each) =>
      each.outerHTML.slice(0, 80),
    ),
    ...[...document.querySelectorAll('*')].flatMap((each) =>
      [...each.attributes]
        .filter(({ name, value }) => name.startsWith('on') || /^\s*javascript:/i.test(value))
        .map(({ name }) => `${each.tagName} ${name}`),
    ),
  ]);
}

describe('the field page', () => {
  test('shows hostile titles and notes as words, on every screen', async () => {
    const { graph, entries } = steered();
    const html = fieldPage({ graph, entries, script: await fieldScript() });
    const at = async (page: Page): Promise<void> => page.clock.install({ time: new Date('2026-05-12T07:30:00') });
    const { page, asked, errors } = await opened('field', html, at);
    await page.waitForSelector('.verdict');
    const tabs = page.getByRole('navigation').getByRole('button');
    for (let index = 0; index < (await tabs.count()); index += 1) {
      await tabs.nth(index).click();
      for (const summary of await page.locator('summary:visible').all()) await summary.click();
      expect(await page.locator('body').innerText()).not.toMatch(STEERING);
    }
    await page.evaluate(() => document.querySelectorAll<HTMLElement>('section.screen').forEach((screen) => (screen.hidden = false)));
    expect(await page.locator('body').innerText()).toContain('<img src=x');
    expect(await page.title()).toContain('<script>alert(1)');
    expect(await harm(page)).toEqual([]);
    expect([asked, errors]).toEqual([[], []]);
    await page.context().close();
  });
});

describe('the playground', () => {
  const quoted = MARKUP.replaceAll('"', '\\"');
  const text = `schedule t "${quoted}" language 1 edition 1 of 2026-01-01 by "${quoted}" fits model "M"
meter m "${quoted}" counts h  gauge g "${quoted}" reads °C  supply s "${quoted}" each
position p "${quoted}" a, b  at rest p a  place l "${quoted}"  step f "${quoted}" p a to b warning "${quoted}" back "${quoted}" takes 1 min at l
task t "${quoted}" every 10 h of m or 1 month, whichever first with p b at l uses 1 s needs "${quoted}" do "${quoted}" warning "${quoted}"
  reason "${quoted}" source "${quoted}" reads g below 5 °C hold "${quoted}" from 5 °C fine
example "${quoted}" 2026-01-01 done t 2026-01-02 expect t overdue
task u "${quoted}" covers nothing`;
  const note = MARKUP + STEER;
  const logbook = [
    { id: 'a', on: '2026-01-01', kind: 'machine', model: note, inService: '2025-01-01', by: note },
    { id: 'b', on: '2026-02-01', kind: 'done', tasks: ['t'], meters: { m: 10 }, readings: { g: 3 }, note },
    { id: note.slice(0, 60), on: '2026-03-01', kind: 'reading', meters: { m: 30, [note.slice(0, 60)]: 1 }, note },
  ]
    .map((entry) => JSON.stringify(entry))
    .join('\n');

  test.each([
    ['a schedule with mistakes', text],
    ['one without', text.replace(/\ntask u .*$/, '')],
  ])(
    'shows the titles and notes of %s as words, in every panel',
    async (_name, schedule) => {
      const files = { 'hostile.due': schedule, 'hostile.jsonl': logbook };
      const { page, asked, errors } = await opened(
        'playground',
        withDesk(await playground(), { files, main: 'hostile.due', logbook: 'hostile.jsonl' }),
      );
      await page.waitForSelector('html[data-checked]');
      await expect.poll(() => page.locator('body').innerText()).toContain('<img src=x');
      for (const tab of await page.locator('#looks button').all()) {
        await tab.click();
        expect(await harm(page)).toEqual([]);
      }
      for (const tab of await page.locator('#files button').all()) await tab.click();
      for (const row of await page.locator('.row').all()) await row.click();
      expect(await harm(page)).toEqual([]);
      expect([asked, errors]).toEqual([[], []]);
      await page.context().close();
    },
    60_000,
  );
});
