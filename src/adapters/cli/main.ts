import { endQuietlyOnClosedPipe, processShell } from './process-shell.js';
import { runCommandLine } from './run-command-line.js';

endQuietlyOnClosedPipe(process.stdout);
void runCommandLine(process.argv.slice(2), processShell()).then((code) => {
  // Set, not exited with: what has been written may still be on its way into a pipe.
  process.exitCode = code;
});
