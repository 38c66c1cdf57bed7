import { spawn } from 'node:child_process';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

/** What a writer said before it ended or was killed. */
export interface WriterRun {
  readonly acknowledged: readonly string[];
  readonly operations: number | null;
  readonly error: string | null;
  readonly signal: NodeJS.Signals | null;
}

/** Bundles the writer once, into a folder of its own. */
export async function buildWriter(): Promise<string> {
  const outfile = join(await mkdtemp(join(tmpdir(), 'duewright-writer-')), 'writer.mjs');
  await build({
    entryPoints: [new URL('writer.ts', import.meta.url).pathname],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
  });
  return outfile;
}

/** Runs it to its end; `before` is put before the command line of a shell (limits). `killAfter`: SIGKILL after so many milliseconds. */
export function runWriter(
  writer: string,
  args: readonly (string | number)[],
  options: { before?: string; killAfter?: number } = {},
): Promise<WriterRun> {
  const command = options.before === undefined ? process.execPath : 'bash';
  const all = [writer, ...args.map(String)];
  const argv = options.before === undefined ? all : ['-c', `${options.before}; exec "$@"`, 'bash', process.execPath, ...all];
  return new Promise((resolve, reject) => {
    const child = spawn(command, argv, { stdio: ['ignore', 'pipe', 'inherit'] });
    let output = '';
    child.stdout.on('data', (data: Buffer) => (output += data.toString()));
    if (options.killAfter !== undefined) setTimeout(() => child.kill('SIGKILL'), options.killAfter);
    child.on('error', reject);
    child.on('close', (_code, signal) => resolve(readOutput(output, signal)));
  });
}

function readOutput(output: string, signal: NodeJS.Signals | null): WriterRun {
  const lines = output.split('\n').filter((line) => line !== '');
  const after = (word: string): string | undefined => lines.find((line) => line.startsWith(word))?.slice(word.length);
  const operations = after('operations ');
  return {
    acknowledged: lines.filter((line) => /^[0-9a-z]{9}-[0-9a-z]{7}$/.test(line)),
    operations: operations === undefined ? null : Number(operations),
    error: after('error ') ?? null,
    signal,
  };
}
