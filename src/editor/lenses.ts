/**
 * Above each worked example, whether it holds.
 */
import type { Span } from '../base/span.js';
import { placed } from '../check/model.js';
import type { Compiled } from '../compile/graph-of.js';
import { positionOf } from '../base/source-text.js';
import type { ExamplesReport, Expectation } from '../examples/report.js';

/** Whether a worked example holds, told above it; `holds` is `null` where it cannot be told. */
export interface Lens {
  /** The first line of the example. */
  readonly at: Span;
  readonly words: string;
  readonly holds: boolean | null;
}

/** One for each example of the file that was asked for. Without a report (the schedule has errors) it cannot be told. */
export function lensesOf(compiled: Compiled, report: ExamplesReport | null): readonly Lens[] {
  const { model, sources } = compiled;
  if (model === null) return [];
  return placed(model, 'example')
    .filter(({ node, home }) => node.at.file === 0 && home.prefix === '')
    .map(({ node }) => {
      const source = sources[0];
      const line = source === undefined ? 0 : positionOf(source, node.at.start).line;
      const run = report?.examples.find(({ place, title }) => place.line === line && title === node.title.text);
      const at = { ...node.at, end: node.title.at.end };
      if (run === undefined) return { at, words: 'cannot be told: the schedule has errors', holds: null };
      return { at, words: wordsFor(run.expectations), holds: run.holds };
    });
}

function wordsFor(expectations: readonly Expectation[]): string {
  const failed = expectations.filter(({ holds }) => !holds);
  const [first] = failed;
  if (expectations.length === 0) return 'expects nothing';
  if (first === undefined) return expectations.length === 1 ? 'holds' : `holds, all ${expectations.length} expectations`;
  return `does not hold: ${failed.length} of ${expectations.length}; ${whatFailed(first)}`;
}

/** `line 12: change-engine-oil is coming-up, not due`. */
function whatFailed({ place, about }: Expectation): string {
  const where = `line ${place.line}`;
  if (about.kind === 'machine') return `${where}: the machine is ${about.actual}, not ${about.expected}`;
  if (about.failed.includes('state')) return `${where}: ${about.task} is ${about.actual.state}, not ${about.expected.state}`;
  return `${where}: ${about.task} is ${about.actual.state}, but not for the reason or up to the point that is expected`;
}
