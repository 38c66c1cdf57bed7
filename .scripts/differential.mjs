/**
 * Bundles the engine and the judge and runs them against one another: `node .scripts/differential.mjs --cases 1000000 --seed 1`.
 */
import { join } from 'node:path';
import { root, runBundled } from './run-bundled.mjs';

process.argv.push('--keep', join(root, 'tests/conformance/found'));
await runBundled('tests/properties/differential-run.ts');
