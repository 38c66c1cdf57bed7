/**
 * Where a Chromium is, for the tests that need a real browser.
 *
 * Asked in this order: the environment's CHROMIUM, the PATH, what playwright has installed for itself.
 */
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

function runs(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function onPath() {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find(runs);
}

async function ofPlaywright() {
  try {
    const { chromium } = await import('playwright-core');
    const path = chromium.executablePath();
    return existsSync(path) ? path : undefined;
  } catch {
    return undefined;
  }
}

/** The path of a Chromium that can be started, or undefined. */
export async function findChromium() {
  const asked = process.env.CHROMIUM;
  if (asked !== undefined && asked !== '') return runs(asked) ? asked : undefined;
  return onPath() ?? (await ofPlaywright());
}
