/**
 * A test runner for Stryker that loads the tests once and tries one mutant after another in the same process. Loading them anew, as vitest
 * does, takes two seconds a mutant; running those that see a mutant takes milliseconds.
 *
 * Only a mutant of code that runs while modules load has them loaded anew. What the code keeps between calls is forgotten between mutants.
 * Tests that have found many mutants for the time that they take are tried first.
 */
import { declareFactoryPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { DryRunStatus, MutantRunStatus, TestStatus, determineHitLimitReached, toMutantRunResult } from '@stryker-mutator/api/test-runner';
import { bundleTests } from './bundle-tests.mjs';
import { forget } from './forgetful-weak-map.mjs';
import { testsFor } from './tests-for.mjs';

/** The name that instrumented code knows its state by. */
const NAMESPACE = '__stryker__';

/** Stryker lets a mutant run a hundred times as often as it is run without a change; a search that takes ten times as long has lost its way. */
const SOONER = 10;

class InProcessRunner {
  #found = new Map();
  #took = new Map();
  #tests = null;
  #state = (globalThis[NAMESPACE] ??= {});

  constructor({ folder, isFar, everyNth }) {
    this.folder = folder;
    this.isFar = isFar;
    this.everyNth = everyNth;
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    this.load = await bundleTests(await testsFor(this.folder, this.isFar), this.isFar);
  }

  async dryRun() {
    this.#state.activeMutant = undefined;
    this.#tests = await this.load();
    const results = [];
    for (const test of this.#tests) {
      this.#state.currentTestId = test.id;
      results.push(await run(test));
      this.#took.set(test.id, results.at(-1).timeSpentMs);
      this.#state.currentTestId = undefined;
    }
    return { status: DryRunStatus.Complete, tests: results, mutantCoverage: this.#state.mutantCoverage };
  }

  async mutantRun({ activeMutant, testFilter, hitLimit: mostHits, mutantActivation, disableBail }) {
    // Counted as an error, which no score counts.
    if (Number(activeMutant.id) % this.everyNth !== 0) return { status: MutantRunStatus.Error, errorMessage: 'not in the sample' };
    const hitLimit = mostHits === undefined ? undefined : mostHits / SOONER;
    const tests = await this.#testsFor(activeMutant.id, mutantActivation === 'static');
    Object.assign(this.#state, { activeMutant: activeMutant.id, hitCount: 0, hitLimit });
    const wanted = testFilter === undefined || tests.length === 1 ? tests : tests.filter(({ id }) => testFilter.includes(id));
    const results = [];
    for (const test of [...wanted].sort((a, b) => this.#promise(b) - this.#promise(a))) {
      const result = await run(test);
      results.push(result);
      if (result.status !== TestStatus.Failed) continue;
      this.#found.set(test.id, (this.#found.get(test.id) ?? 0) + 1);
      if (!disableBail) break;
    }
    this.#state.activeMutant = undefined;
    return toMutantRunResult(determineHitLimitReached(this.#state.hitCount, hitLimit) ?? { status: DryRunStatus.Complete, tests: results });
  }

  /** The tests, loaded while the mutant is on if that is where it shows, and without any otherwise. */
  async #testsFor(id, isStatic) {
    if (isStatic) return this.#loadedUnder(id);
    this.#tests ??= await this.load();
    return this.#tests;
  }

  async #loadedUnder(id) {
    this.#state.activeMutant = id;
    try {
      return await this.load();
    } catch (error) {
      const body = () => Promise.reject(error);
      return [{ id: 'loading the tests', file: '', body }];
    }
  }

  /** Mutants found for each millisecond, as far as is known. */
  #promise({ id }) {
    return ((this.#found.get(id) ?? 0) + 0.1) / ((this.#took.get(id) ?? 10) + 1);
  }
}

async function run({ id, file, body }) {
  forget();
  const start = performance.now();
  const result = { id, name: id, fileName: file };
  try {
    await body();
    return { ...result, status: TestStatus.Success, timeSpentMs: performance.now() - start };
  } catch (error) {
    return { ...result, status: TestStatus.Failed, timeSpentMs: performance.now() - start, failureMessage: String(error) };
  }
}

/**
 * The environment says, to this process as to Stryker's own, which folder of `src` is mutated (`MUTATED`), whether the far tests are tried as
 * well (`MUTATED_FAR`), and that only every so-manieth mutant is tried (`MUTATED_EVERY`).
 */
function createRunner() {
  const { MUTATED, MUTATED_FAR, MUTATED_EVERY } = process.env;
  return new InProcessRunner({ folder: MUTATED, isFar: MUTATED_FAR === '1', everyNth: Number(MUTATED_EVERY ?? 1) });
}
createRunner.inject = [];

export const strykerPlugins = [declareFactoryPlugin(PluginKind.TestRunner, 'in-process', createRunner)];
