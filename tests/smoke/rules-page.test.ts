import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildCommand, type BuiltCommand } from '../adapters/cli/built-command.js';

let built: BuiltCommand;
let browser: Browser;
let page: Page;
let folder = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'duewright-'));
  built = await buildCommand();
  const file = join(folder, 'oil.html');
  const run = built.run(['rules', 'tests/cases/cli/files/water-pump.due', 'change-engine-oil', '--html', file]);
  expect(run).toEqual({ code: 0, out: '', err: '' });
  // Chromium's own sandbox cannot be had by root in a container; what is opened is our own page.
  browser = await chromium.launch({ executablePath: process.env['CHROMIUM'] ?? '', args: ['--no-sandbox'] });
  page = await (await browser.newContext({ offline: true })).newPage();
  await page.goto(pathToFileURL(file).href);
}, 60_000);

afterAll(async () => {
  await browser.close();
  built.remove();
  rmSync(folder, { recursive: true, force: true });
});

test('the page of a task opens from disk without a network and shows its rules', async () => {
  const words = (await page.locator('body').innerText()).replace(/\s+/g, ' ');
  expect(words).toContain('Change the engine oil');
  expect(words).toContain('50 h');
  expect(words).toContain('12 months');
  expect(await page.locator('svg').count()).toBeGreaterThan(0);
});

test('the page asks for nothing from anywhere', async () => {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.reload();
  expect(asked.filter((url) => !url.startsWith('file:'))).toEqual([]);
});

test('the page can be read by those who use a screen reader', async () => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)).toEqual([]);
});
