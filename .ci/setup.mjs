/**
 * Makes a fresh clone ready: installs what package-lock.json names if it is not there yet, and with `--browser` sees to a Chromium.
 *
 * Uses nothing but Node, because it runs before anything is installed.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, lstatSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { findChromium } from './chromium.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

function run(command, args) {
  console.error(`> ${command} ${args.join(' ')}`);
  // npm is a script on some systems, which only a shell can start.
  return spawnSync(command, args, { cwd: root, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' }).status === 0;
}

/** npm writes node_modules/.package-lock.json last of all: older than the lock, or missing, means not installed. */
function installed() {
  const stamp = new URL('../node_modules/.package-lock.json', import.meta.url);
  const lock = new URL('../package-lock.json', import.meta.url);
  return existsSync(stamp) && statSync(stamp).mtimeMs >= statSync(lock).mtimeMs;
}

/** `npm ci` begins by emptying the folder, and would follow a link to one that others use. */
function isLink() {
  return lstatSync(new URL('../node_modules', import.meta.url), { throwIfNoEntry: false })?.isSymbolicLink() === true;
}

function install() {
  if (installed()) return;
  if (isLink())
    fail('node_modules is a link, and what it leads to is not what package-lock.json names: remove the link, or run `npm ci` there.');
  if (!run('npm', ['ci', '--no-audit', '--no-fund'])) fail('`npm ci` failed: the packages could not be installed.');
}

function mayInstall() {
  return process.getuid?.() === 0 && spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status === 0;
}

function installChromium() {
  const quiet = ['-o', 'Dpkg::Use-Pty=0', '-qq'];
  return run('apt-get', [...quiet, 'update']) && run('apt-get', [...quiet, 'install', '-y', '--no-install-recommends', 'chromium']);
}

async function seeToBrowser() {
  if ((await findChromium()) !== undefined) return;
  if (process.env.CHROMIUM) fail(`CHROMIUM names \`${process.env.CHROMIUM}\`, which cannot be started.`);
  if (mayInstall()) installChromium();
  if ((await findChromium()) === undefined) {
    fail('The tests need a Chromium and there is none: install one (on Debian: `apt-get install chromium`) or name one in CHROMIUM.');
  }
}

function fail(message) {
  console.error(message);
  process.exit(1);
}

install();
if (process.argv.includes('--browser')) await seeToBrowser();
