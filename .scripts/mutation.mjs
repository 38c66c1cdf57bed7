/**
 * `npm run test:mutation -- history assess`: tries mutants of whole folders of `src` against the tests that speak of them (tests/mutation), one
 * folder after another, and ends with the score of each. Fails where one is below 90 %. A second run tries only what has changed.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

const all = ['history', 'assess', 'compile', 'access'];
const named = process.argv.slice(2).filter((arg) => !arg.startsWith('-'));
const options = process.argv.slice(2).filter((arg) => arg.startsWith('-'));
const unknown = named.filter((folder) => !all.includes(folder));
if (unknown.length > 0) {
  console.error(`no tests are told for ${unknown.join(', ')}; there are some for ${all.join(', ')}`);
  process.exit(2);
}

const wanted = named.length === 0 ? all : named;
const ended = wanted.map((folder) => {
  // What the near tests let pass is tried once more, against the far ones too.
  const runs = ['0', '1'].map((far) =>
    spawnSync('npx', ['stryker', 'run', 'tests/mutation/stryker.config.mjs', ...options], {
      stdio: 'inherit',
      env: { ...process.env, MUTATED: folder, MUTATED_FAR: far },
    }),
  );
  return runs.at(-1)?.status;
});

const heads = ['folder', 'mutants', 'killed', 'timed out', 'survived', 'not reached', 'score'];
console.log(`\n${heads.join(' | ')}`);
for (const folder of wanted) console.log([folder, ...figuresOf(folder)].join(' | '));
process.exitCode = ended.every((status) => status === 0) ? 0 : 1;

/** What the report of a folder adds up to. */
function figuresOf(folder) {
  const { files } = JSON.parse(readFileSync(`.cache/mutation/${folder}.json`, 'utf8'));
  const states = Object.values(files).flatMap(({ mutants }) => mutants.map(({ status }) => status));
  const count = (status) => states.filter((each) => each === status).length;
  const [killed, timedOut, survived, notReached] = ['Killed', 'Timeout', 'Survived', 'NoCoverage'].map(count);
  const valid = killed + timedOut + survived + notReached;
  return [valid, killed, timedOut, survived, notReached, `${((100 * (killed + timedOut)) / valid).toFixed(1)} %`];
}
