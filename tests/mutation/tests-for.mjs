/**
 * Which tests speak of a folder of `src`: fast ones, none that spawn, build or draw a page. The near ones are tried on every mutant, the far ones
 * only on those that the near ones let pass.
 */
import { readdir } from 'node:fs/promises';

const near = {
  history: ['tests/history'],
  assess: [
    'tests/assess',
    'tests/explain/explain.test.ts',
    'tests/explain/every-case.test.ts',
    'tests/properties/replay-found.test.ts',
    'tests/render/why.test.ts',
  ],
  compile: ['tests/compile'],
  access: ['tests/access'],
};

const far = {
  history: ['tests/conformance'],
  assess: ['tests/conformance'],
  compile: [],
  access: [],
};

/** Tests of the near files that take a second and more: they are tried with the far ones. */
const takesLong =
  /brute force over the rule graph|published shape|eight-puzzle|with %i disks.* 4$|balls.* [56]$|random machines of|so many boxes|with the parts that have them|so many 3$|missionaries|patterns that overlap|and ways into a set|whoever stops|any schedule and any history|its own kinds are enough.* [12]$|every-case\.test\.ts > (?!generated-(stages|calendar)|stages-and|days-and|calendar)|sixty-four|agrees with the published JSON|compiling ends with a graph|the same graph or none > of (?!schedules|compile\/)|counterexample > (tangled|too-many)/;

/** What measures time says nothing of a mutant, and fails where instrumented code is slower. */
const measuresTime = /ten thousand readings|made-up histories cost|HiGHS/;

/** A mutant that only these find would take half an hour of them, or they ask for more random cases than mutants are given. */
const takesTooLong = /towns of|of schedules with some of their words changed/;

/** @param {string} folder @param {boolean} isFar @returns {Promise<readonly string[]>} */
export async function testsFor(folder, isFar) {
  const places = [...near[folder], ...(isFar ? far[folder] : [])];
  const found = await Promise.all(places.map(testFilesIn));
  return ['tests/seed.ts', ...found.flat().sort()];
}

/** @param {string} title @param {boolean} isFar */
export function isTried(title, isFar) {
  return !measuresTime.test(title) && !takesTooLong.test(title) && (isFar || !takesLong.test(title));
}

async function testFilesIn(place) {
  if (place.endsWith('.ts')) return [place];
  return (await readdir(place)).filter((name) => name.endsWith('.test.ts')).map((name) => `${place}/${name}`);
}
