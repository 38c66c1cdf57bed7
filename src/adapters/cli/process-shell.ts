import { dayNumber } from '../../values/civil.js';
import type { Shell } from './shell.js';

/** The world as this process finds it: the only place of the command line that looks at the clock and the environment. */
export function processShell(): Shell {
  const columns = process.stdout.isTTY ? process.stdout.columns : undefined;
  return {
    env: process.env,
    now: () => {
      const now = new Date();
      const day = dayNumber({ year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() });
      return { day, minute: now.getHours() * 60 + now.getMinutes() };
    },
    instant: () => `${new Date().toISOString().slice(0, 19)}Z`,
    columns,
    out: (text) => void process.stdout.write(text),
    err: (text) => void errors().write(text),
    get progress() {
      // An answer that runs down the same terminal shows how far it is by itself.
      return process.stderr.isTTY && !process.stdout.isTTY ? progress : undefined;
    },
    // Looked at only by commands that ask: Node opens each of its streams when it is first named, and that takes its time.
    get ask() {
      return process.stdin.isTTY && process.stderr.isTTY ? ask : undefined;
    },
  };
}

/** On the error stream, so that the answer can still go into a file. */
async function ask(question: string): Promise<string | null> {
  const { createInterface } = await import('node:readline');
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  return new Promise((resolve) => {
    terminal.on('close', () => resolve(null));
    terminal.question(question, (said) => {
      resolve(said);
      terminal.close();
    });
  });
}

/** From the beginning of the line, which is cleared first (ECMA-48, EL). */
function progress(text: string): void {
  errors().write(`\r\u001B[K${text}`);
}

/** The error stream, when there is something to say on it. */
function errors(): NodeJS.WriteStream {
  if (process.stderr.listenerCount('error') === 0) endQuietlyOnClosedPipe(process.stderr);
  return process.stderr;
}

/** A reader that has seen enough (`duewright due … | head -3`) closes the pipe: that ends us quietly, and is no fault. */
export function endQuietlyOnClosedPipe(stream: NodeJS.WriteStream): void {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
}
