/**
 * The door to this folder: the worked examples that a schedule carries, run.
 */
import { placed } from '../check/model.js';
import type { Compiled } from '../compile/graph-of.js';
import { benchOf } from './bench.js';
import { coverageOf } from './coverage.js';
import { partsToShow } from './look-for.js';
import { propose } from './propose.js';
import type { Coverage, ExamplesReport } from './report.js';
import { runExample } from './run-example.js';

/** What to do beyond running them. */
export interface ExamplesOptions {
  /** Propose an example for every outcome that none shows. Takes several runs for each. */
  readonly propose?: boolean;
}

/**
 * Runs the worked examples of a schedule, each from an empty logbook: states, due points and deciding parts are held against what the
 * engine says at the moment of each `expect`. Also says which parts of the rules the examples show.
 *
 * Those of the file that was asked for are run; a variant's base and an attachment's schedule have theirs run by themselves.
 *
 * @returns null if the schedule did not compile.
 * @example runExamples(compile('tarn-55.due', load))?.holds
 */
export function runExamples({ graph, model, sources }: Compiled, options: ExamplesOptions = {}): ExamplesReport | null {
  if (graph === null || model === null) return null;
  const bench = benchOf(graph, model, sources);
  const own = placed(model, 'example').filter(({ node, home }) => node.at.file === 0 && home.prefix === '');
  const seen = own.map(({ node, home }) => runExample(bench, home, node));
  const examples = seen.map(({ run }) => run);
  const coverage = coverageOf(
    graph,
    seen.flatMap(({ sights }) => sights),
  );
  return {
    format: 'duewright-examples',
    version: 1,
    schedule: { name: graph.schedule.name, fingerprint: graph.fingerprint },
    holds: examples.every(({ holds }) => holds),
    expectations: examples.reduce((sum, { expectations }) => sum + expectations.length, 0),
    examples,
    coverage,
    proposals: options.propose === true ? proposalsFor(bench, coverage) : [],
  };
}

function proposalsFor(bench: Parameters<typeof propose>[0], { items }: Coverage): ExamplesReport['proposals'] {
  const parts = partsToShow(bench.graph);
  return items.flatMap((item, index) => {
    const wanted = parts[index];
    const missing = wanted === undefined ? [] : item.outcomes.filter(({ by }) => by === null);
    return missing.map(({ outcome }) => ({
      item: index,
      outcome,
      proposal: wanted === undefined ? null : propose(bench, wanted, outcome),
    }));
  });
}
