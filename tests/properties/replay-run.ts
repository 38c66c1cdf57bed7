/**
 * The long run of the properties of explanations: `node .scripts/replay.mjs [--cases N] [--seed S] [--shrink]`.
 *
 * Goes on past failures, prints how often each property failed, and the situations (with `--shrink`: made as small as they go).
 */
import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { anyReplay, PROPERTIES } from './replay.js';

const BATCH = 100;

const { values } = parseArgs({ options: { cases: { type: 'string' }, seed: { type: 'string' }, shrink: { type: 'boolean' } } });
const wanted = Number(values.cases ?? 20_000);
const firstSeed = Number(values.seed ?? Date.now() % 1_000_000_000);
const failed = new Map<string, number>(Object.keys(PROPERTIES).map((name) => [name, 0]));

for (let seed = firstSeed, cases = 0; cases < wanted; seed += 1) {
  const batch = fc.sample(anyReplay, { numRuns: BATCH, seed });
  for (const [name, faultsOf] of Object.entries(PROPERTIES)) {
    const wrong = batch.filter((given) => faultsOf(given).length > 0);
    failed.set(name, (failed.get(name) ?? 0) + wrong.length);
    for (const given of wrong.slice(0, 2)) {
      console.log(`seed ${seed}, not ${name}:\n${fc.stringify(given.each)}\n${faultsOf(given).join('\n')}\n`);
    }
    if (wrong.length > 0 && values.shrink === true) shrunk(name, faultsOf, seed);
  }
  cases += BATCH;
  console.log(`seed ${seed}: ${cases} situations, failed: ${[...failed].map(([name, count]) => `${name} ${count}`).join(', ')}`);
}
process.exitCode = [...failed.values()].some((count) => count > 0) ? 1 : 0;

function shrunk(name: string, faultsOf: (typeof PROPERTIES)[keyof typeof PROPERTIES], seed: number): void {
  const result = fc.check(
    fc.property(anyReplay, (given) => faultsOf(given).length === 0),
    { numRuns: BATCH, seed },
  );
  const [given] = result.counterexample ?? [];
  if (given !== undefined) console.log(`seed ${seed}, not ${name}, shrunk:\n${fc.stringify(given.each)}\n${faultsOf(given).join('\n')}\n`);
}
