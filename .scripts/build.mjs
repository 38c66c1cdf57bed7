/** Builds dist/: the command, the library entries, the pages, and the licences of the packages bundled into them. Their types are written by `tsc -p tests/tsconfig.build.json`. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { buildCommand, layDownCode, library } from './bundles.mjs';
import { notices } from './notices.mjs';
import { buildPages } from './pages.mjs';

const dist = fileURLToPath(new URL('../dist/', import.meta.url));

// What an earlier build left would otherwise be published with the rest.
rmSync(dist, { recursive: true, force: true });
mkdirSync(dist, { recursive: true });
await Promise.all([buildCommand(`${dist}cli/`), build(library)]);
layDownCode(`${dist}cli/`);
await buildPages(dist);
writeFileSync(`${dist}third-party-notices.txt`, notices());
