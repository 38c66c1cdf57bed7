#!/usr/bin/env node
/**
 * Starts the command: runs the files beside this one, with what V8 made of them the last time.
 *
 * Small and first: what is imported here, every command waits for.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';
import { cacheFolder, keep, readKept } from './kept-files.js';

/** Says which build the files beside are of; the build puts it in. */
declare const BUILD: string;
/** Node's own, of this file; made an ES module for checking only, it is CommonJS when it runs. */
declare const require: NodeJS.Require;
declare const __dirname: string;

// Most commands are over before optimized machine code pays for itself: V8 (of Node 20 to 24) waits longer before it makes any.
if (/^1[1-3]\./.test(process.versions.v8)) setFlagsFromString('--interrupt-budget=1000000');

const folder = cacheFolder(process.env, process.platform);
const [command = '', ...rest] = process.argv.slice(2);
/** Each command uses other parts of the files; whoever asks for help uses none of them. */
const kind = rest.includes('--help') || rest.includes('-h') || !/^[a-z-]{1,20}$/.test(command) ? 'none' : command;
/** What the build has laid down, for the Node that built it. */
const laidDown = join(__dirname, 'code');
const loaded = new Map<string, unknown>();

/** As `require`, for the files beside this one. */
function load(name: string): unknown {
  if (!name.startsWith('./')) return require(name) as unknown;
  if (!loaded.has(name)) loaded.set(name, run(name.slice(2)));
  return loaded.get(name);
}

function run(name: string): unknown {
  const filename = join(__dirname, name);
  const kept = `${BUILD}-${process.version}-${process.arch}-${kind}-${name}.code`;
  const cachedData = readKept(laidDown, kept) ?? (folder === null ? undefined : readKept(folder, kept));
  const source = `(function (exports, require, module, __filename, BUILD) {${readFileSync(filename, 'latin1')}\n})`;
  const script = new Script(source, { filename, ...(cachedData === undefined ? {} : { cachedData }) });
  const made = { exports: {} };
  (script.runInThisContext() as (...args: readonly unknown[]) => void)(made.exports, load, made, filename, BUILD);
  if (folder !== null && (cachedData === undefined || script.cachedDataRejected === true)) {
    // At the end, when the functions that this command uses have been made.
    process.on('exit', (code) => {
      // A command that there is not, or that failed, leaves nothing.
      if (code <= 1) keep(folder, BUILD, kept, script.createCachedData());
    });
  }
  return made.exports;
}

load('./command.js');
