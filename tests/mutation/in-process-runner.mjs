/**
 * A test runner for Stryker that loads the tests once and tries one mutant after another in the same process. Loading them anew, as vitest
 * does, takes two seconds a mutant; running those that see a mutant takes milliseconds.
 *
 * Only a mutant of code that runs while modules load has them loaded anew. What the code keeps between calls is forgotten between mutants.
 * Tests that have found many mutants for the time that they take are tried first.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { declareFactoryPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { DryRunStatus, MutantRunStatus, TestStatus, toMutantRunResult } from '@stryker-mutator/api/test-runner';
import { bundleTests } from './bundle-tests.mjs';
import { forget } from './forgetful-weak-map.mjs';
import { Leash } from './leash.mjs';
import { testsFor } from './tests-for.mjs';

/** The name that instrumented code knows its state by. */
const NAMESPACE = '__stryker__';

/** A mutant under which a test does ten times as much as it does without a change has lost its way. */
const TOO_MUCH = 10;

/** How often each test asks which mutant is on, and how much less often when it runs again: kept for a process that takes over from one that hung. */
const MEASURED = '.cache/mutation/asked.json';

class InProcessRunner {
  #found = new Map();
  #took = new Map();
  #asked = new Map();
  #once = new Map();
  #tests = null;
  #state = (globalThis[NAMESPACE] ??= {});
  #leash = new Leash(this.#state);

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
    if (!existsSync(MEASURED)) return;
    const { asked, once } = JSON.parse(readFileSync(MEASURED, 'utf8'));
    [this.#asked, this.#once] = [new Map(asked), new Map(once)];
  }

  async dryRun() {
    this.#state.activeMutant = undefined;
    this.#tests = await this.load();
    const results = [];
    for (const test of this.#tests) {
      this.#state.currentTestId = test.id;
      const [first, again] = [await this.#measured(test), await this.#measured(test)];
      results.push(first.result);
      this.#took.set(test.id, first.result.timeSpentMs);
      this.#asked.set(test.id, first.asked);
      this.#once.set(test.id, first.asked - again.asked);
      this.#state.currentTestId = undefined;
    }
    mkdirSync(dirname(MEASURED), { recursive: true });
    writeFileSync(MEASURED, JSON.stringify({ asked: [...this.#asked], once: [...this.#once] }));
    return { status: DryRunStatus.Complete, tests: results, mutantCoverage: this.#state.mutantCoverage };
  }

  async #measured(test) {
    this.#leash.from();
    const result = await run(test);
    return { result, asked: this.#leash.asked };
  }

  async mutantRun({ activeMutant, testFilter, mutantActivation, disableBail }) {
    // Counted as an error, which no score counts.
    if (Number(activeMutant.id) % this.everyNth !== 0) return { status: MutantRunStatus.Error, errorMessage: 'not in the sample' };
    const tests = await this.#testsFor(activeMutant.id, mutantActivation === 'static');
    this.#state.activeMutant = activeMutant.id;
    const wanted = testFilter === undefined || tests.length === 1 ? tests : tests.filter(({ id }) => testFilter.includes(id));
    const results = [];
    let isEndless = false;
    for (const test of [...wanted].sort((a, b) => this.#promise(b) - this.#promise(a))) {
      this.#leash.from(this.#mostFor(test));
      const result = await run(test);
      results.push(result);
      isEndless ||= this.#leash.isSpent;
      if (result.status !== TestStatus.Failed && !isEndless) continue;
      this.#found.set(test.id, (this.#found.get(test.id) ?? 0) + 1);
      if (!disableBail) break;
    }
    this.#state.activeMutant = undefined;
    this.#leash.from();
    if (isEndless) return { status: MutantRunStatus.Timeout, reason: 'runs on and on' };
    return toMutantRunResult({ status: DryRunStatus.Complete, tests: results });
  }

  /** What a test reads once for all (a schedule, say) may have been read by another when it was measured: the most that any does is let pass. */
  #mostFor({ id }) {
    return TOO_MUCH * (this.#asked.get(id) ?? Infinity) + TOO_MUCH * Math.max(0, ...this.#once.values());
  }

  /** The tests, loaded while the mutant is on if that is where it shows, and without any otherwise. */
  async #testsFor(id, isStatic) {
    if (isStatic) return this.#loadedUnder(id);
    this.#tests ??= await this.load();
    return this.#tests;
  }

  async #loadedUnder(id) {
    this.#state.activeMutant = id;
    this.#leash.from();
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
