/**
 * The long differential run: `node .scripts/differential.mjs [--cases N] [--seed S] [--seconds T]`.
 *
 * Prints progress, the seed of each batch, and every disagreement as shrunk by fast-check; keeps those under tests/conformance/found/.
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { writtenMoment } from '../conformance/conformance-case.js';
import { anyTrial, disagreements, disagreementsOf, questionsThatMatter, type Trial } from './differential.js';

const BATCH = 50;
/** How long a batch, and making its failure smaller, may take: milliseconds. */
const PATIENCE = 900_000;

const { values } = parseArgs({
  options: { cases: { type: 'string' }, seed: { type: 'string' }, seconds: { type: 'string' }, keep: { type: 'string' } },
});
const wanted = Number(values.cases ?? 1_000_000);
const seconds = Number(values.seconds ?? Infinity);
const firstSeed = Number(values.seed ?? Date.now() % 1_000_000_000);

/** The first question on which they differ, as a conformance case without expectations: which of the two is right is for docs/meaning.md to say. */
function kept(trial: Trial, said: string): string {
  const all = questionsThatMatter(trial);
  const question = all.find((each) => disagreements(trial.graph, each).length > 0) ?? all[0];
  if (question === undefined) throw new Error('nothing was asked');
  const found = {
    name: said,
    section: 'found',
    history: question.entries,
    now: writtenMoment(question.now),
    intent: question.intent,
    expected: {},
  };
  const file = {
    format: 'duewright-conformance',
    version: 1,
    schedules: { tried: inMain(trial.files) },
    cases: [found],
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}

/** A conformance case calls the schedule itself `main.due`. */
function inMain({ 'tried.due': main = '', ...others }: Trial['files']): Record<string, string> {
  return { 'main.due': main, ...others };
}

function run(): void {
  const began = Date.now();
  let [trials, questions, differing] = [0, 0, 0];
  for (let seed = firstSeed; questions < wanted && (Date.now() - began) / 1000 < seconds; seed += 1) {
    let shrinking = false;
    const property = fc.property(anyTrial, (trial) => {
      const all = questionsThatMatter(trial);
      // What is asked while a failure is made smaller does not count.
      if (!shrinking) questions += all.length;
      const found = all.flatMap((question) => disagreements(trial.graph, question));
      shrinking ||= found.length > 0;
      if (found.length > 0) throw new Error(found.slice(0, 3).join('\n'));
    });
    const result = fc.check(property, { numRuns: BATCH, seed, interruptAfterTimeLimit: PATIENCE });
    trials += result.numRuns;
    if (result.failed) {
      differing += 1;
      report(seed, result.counterexample?.[0]);
    }
    const took = (Date.now() - began) / 1000;
    console.log(
      `seed ${seed}: ${trials} trials, ${questions} questions, ${differing} disagreements, ${Math.round(questions / took)} a second`,
    );
  }
  process.exitCode = differing > 0 ? 1 : 0;
}

function report(seed: number, trial: Trial | undefined): void {
  if (trial === undefined) return;
  const said = disagreementsOf(trial).slice(0, 4).join('\n');
  console.log(`seed ${seed} differs:\n${fc.stringify(trial)}\n${said}`);
  if (values.keep !== undefined) writeFileSync(`${values.keep}/seed-${seed}.json`, kept(trial, said));
}

run();
