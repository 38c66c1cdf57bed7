/** Builds dist/: the command and the two library entries. Their types are written by `tsc -p tests/tsconfig.build.json`. */
import { chmodSync, mkdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { command, library } from './bundles.mjs';

const dist = fileURLToPath(new URL('../dist/', import.meta.url));

// Old chunks would otherwise pile up beside the new ones.
for (const folder of ['cli', 'chunks']) rmSync(`${dist}${folder}`, { recursive: true, force: true });
mkdirSync(dist, { recursive: true });
await Promise.all([build(command), build(library)]);
chmodSync(`${dist}cli/duewright.js`, 0o755);
