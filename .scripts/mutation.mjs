/**
 * `npm run test:mutation -- history assess`: tries mutants of whole folders of `src` against the tests that speak of them (tests/mutation), one
 * folder after another, and ends with the score of each. Fails where one is below 90 %. A second run tries only what has changed.
 * `--near` leaves out the far tests; `--every 6` tries every sixth mutant, for the score of a sample.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';

const all = ['history', 'assess', 'compile', 'access'];
const { values, positionals: named } = parseArgs({
  allowPositionals: true,
  options: { every: { type: 'string', default: '1' }, near: { type: 'boolean', default: false } },
});
const unknown = named.filter((folder) => !all.includes(folder));
if (unknown.length > 0) {
  console.error(`no tests are told for ${unknown.join(', ')}; there are some for ${all.join(', ')}`);
  process.exit(2);
}

// A mutant that doubles an array for each item it is given asks for all the memory that there is before it fails: 6 GB of addresses are plenty.
const run = 'npx stryker run tests/mutation/stryker.config.mjs';
const [program, ...args] = process.platform === 'linux' ? ['sh', '-c', `ulimit -v 6000000; exec ${run}`] : run.split(' ');

const wanted = named.length === 0 ? all : named;
for (const folder of wanted) {
  // What the near tests let pass is tried once more, against the far ones too.
  for (const far of values.near ? ['0'] : ['0', '1']) {
    spawnSync(program, args, {
      stdio: 'inherit',
      env: { ...process.env, MUTATED: folder, MUTATED_FAR: far, MUTATED_EVERY: values.every },
    });
  }
}

const heads = ['folder', 'mutants', 'tried', 'killed', 'timed out', 'survived', 'not reached', 'score'];
console.log(`\n${heads.join(' | ')}`);
const scores = wanted.map((folder) => {
  const figures = figuresOf(folder);
  console.log([folder, ...figures.counts, `${(100 * figures.score).toFixed(1)} %`].join(' | '));
  return figures.score;
});
process.exitCode = scores.every((score) => score >= 0.9) ? 0 : 1;

/** What the report of a folder adds up to. Those that no test reaches were not found, whether or not they are in a sample. */
function figuresOf(folder) {
  const { files } = JSON.parse(readFileSync(`.cache/mutation/${folder}.json`, 'utf8'));
  const states = Object.values(files).flatMap(({ mutants }) => mutants.map(({ status }) => status));
  const count = (status) => states.filter((each) => each === status).length;
  const [killed, timedOut, survived, notReached] = ['Killed', 'Timeout', 'Survived', 'NoCoverage'].map(count);
  const tried = killed + timedOut + survived;
  const reached = 1 - notReached / states.length;
  return { counts: [states.length, tried, killed, timedOut, survived, notReached], score: (reached * (killed + timedOut)) / tried };
}
