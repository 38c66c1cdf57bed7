import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';

/** A browser with pages that reach no network, and a folder for files. */
export interface Workshop {
  readonly folder: string;
  readonly open: (url: string, options?: BrowserContextOptions, before?: (page: Page) => Promise<void>) => Promise<OpenPage>;
  readonly close: () => Promise<void>;
}

export interface OpenPage {
  readonly page: Page;
  /** Whatever the page asked for besides itself. */
  readonly asked: readonly string[];
  /** Errors of its scripts, and what its policy stopped. */
  readonly errors: readonly string[];
}

export async function openWorkshop(): Promise<Workshop> {
  const folder = mkdtempSync(join(tmpdir(), 'duewright-pages-'));
  // Chromium's own sandbox cannot be had by root in a container; what is opened is our own page.
  const args = ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'];
  const browser: Browser = await chromium.launch({ executablePath: process.env['CHROMIUM'] ?? '', args });
  return {
    folder: `${folder}/`,
    open: async (url, options = {}, before) => {
      const context = await browser.newContext({ offline: true, ...options });
      const asked: string[] = [];
      const errors: string[] = [];
      await context.route(/^(?!file:|blob:|data:)/, (route) => {
        asked.push(route.request().url());
        return route.abort();
      });
      const page = await context.newPage();
      page.on('pageerror', (error) => errors.push(error.message));
      page.on('console', (message) => {
        if (message.type() === 'error') errors.push(message.text());
      });
      await before?.(page);
      await page.goto(url);
      return { page, asked, errors };
    },
    close: async () => {
      await browser.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** What axe finds wrong, one line each. @param more rules that are not on by themselves. */
export async function axeProblems(page: Page, more: readonly string[] = []): Promise<readonly string[]> {
  const builder = new AxeBuilder({ page }).options({ rules: Object.fromEntries(more.map((rule) => [rule, { enabled: true }])) });
  const { violations } = await builder.analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary ?? ''}`));
}
