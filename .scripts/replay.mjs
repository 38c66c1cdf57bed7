/**
 * Bundles the properties of explanations and holds them to many random situations: `node .scripts/replay.mjs --cases 20000 --seed 1`.
 */
import { runBundled } from './run-bundled.mjs';

await runBundled('tests/properties/replay-run.ts');
