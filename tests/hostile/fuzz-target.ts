/** What fuzzing runs: one input of one sort through everything; and how an input of that sort is bent. */
import { compile } from '../../src/compile/compile.js';
import { format } from '../../src/format/format.js';
import { graphFingerprint } from '../../src/graph/fingerprint.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { askEverything } from './ask-everything.js';

/** A schedule's text, the lines of a logbook (for a schedule that stays), or a compiled graph. */
export type Sort = 'schedule' | 'logbook' | 'graph';

/** Signs that no output for a person may hold: they would steer a terminal. */
// eslint-disable-next-line no-control-regex -- control characters are what this is about
const STEERING = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/u;

/** Runs one input. Throws where the program is at fault: by what it threw, or by a sign that may not come out. */
export function tryInput(sort: Sort, input: string, machine: string): void {
  const { shown } = askEverything(
    sort === 'schedule'
      ? { files: { 'schedule.due': input } }
      : sort === 'logbook'
        ? { graph: machine, logbook: input }
        : { graph: resealed(input) },
  );
  const steering = STEERING.exec(shown);
  if (steering !== null) throw new Error(`output holds U+${(shown.codePointAt(steering.index) ?? 0).toString(16)}`);
  if (sort === 'schedule') format(input);
}

/** A compiled graph of a text, as JSON; empty where there is none. */
export function graphText(text: string): string {
  const { graph } = compile('schedule.due', (path) => (path === 'schedule.due' ? text : undefined));
  return graph === null ? '' : JSON.stringify(graph);
}

/** The fingerprint made to fit again, so that what comes behind it is tried too. */
function resealed(text: string): string {
  try {
    const graph = JSON.parse(text) as RuleGraph;
    return JSON.stringify({ ...graph, fingerprint: graphFingerprint(graph) });
  } catch {
    return text;
  }
}
