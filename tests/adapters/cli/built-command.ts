import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildCommand as build } from '../../../.scripts/bundles.mjs';

/** The root of the project: where the commands of the cases are run. */
export const root = fileURLToPath(new URL('../../..', import.meta.url));

/** How one run of the command ended, and what it said. */
export interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface BuiltCommand {
  readonly script: string;
  /** A folder for what a test writes; it goes when the command does. */
  readonly scratch: string;
  readonly run: (args: readonly string[], options?: { readonly input?: string; readonly env?: Readonly<Record<string, string>> }) => Run;
  readonly remove: () => void;
}

/** Bundles the command exactly as it is published, to a folder of its own, so that a test never runs an old one. */
export async function buildCommand(): Promise<BuiltCommand> {
  const folder = `${root}node_modules/.cache/duewright-${process.pid}-${process.hrtime.bigint()}/`;
  await build(folder);
  const script = `${folder}duewright.js`;
  const scratch = mkdtempSync(join(tmpdir(), 'duewright-'));
  return {
    script,
    scratch,
    run: (args, { input = '', env = {} } = {}) => {
      // The least environment there is, so that a case looks the same on every machine.
      const result = spawnSync(process.execPath, [script, ...args], {
        cwd: root,
        input,
        env: { LANG: 'en_GB.UTF-8', DUEWRIGHT_CACHE: `${folder}cache`, ...env },
        encoding: 'utf8',
      });
      return { code: result.status, out: result.stdout, err: result.stderr };
    },
    remove: () => [folder, scratch].forEach((each) => rmSync(each, { recursive: true, force: true })),
  };
}
