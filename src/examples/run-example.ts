/**
 * One worked example, run.
 */
import { assess } from '../assess/assess.js';
import { assertNever } from '../base/assert-never.js';
import type { Home } from '../check/model.js';
import type { ActNode, ExampleLineNode, ExampleNode, ExpectNode } from '../syntax/tree.js';
import { dayOf } from '../values/civil.js';
import { type Moment, parseTime } from '../values/moment.js';
import { placeAt, type Bench } from './bench.js';
import type { Sight } from './coverage.js';
import { holdAgainst } from './hold-against.js';
import type { ExampleRun, Expectation } from './report.js';
import { newLine, nothingTold, tell } from './tell.js';

/** What one example came to, and what was looked at in it. */
export interface ExampleSeen {
  readonly run: ExampleRun;
  readonly sights: readonly Sight[];
}

/** Runs one example. */
export function runExample(bench: Bench, home: Home, example: ExampleNode): ExampleSeen {
  const expectations: Expectation[] = [];
  const sights: Sight[] = [];
  let told = nothingTold;
  for (const line of example.lines) {
    told = newLine(told);
    for (const item of line.items) {
      if (!isExpect(item)) {
        told = tell(told, line, item, bench.meaning);
        continue;
      }
      const { entries, intent } = told;
      const assessment = assess(bench.graph, entries, momentOf(line), { intent });
      const found = holdAgainst(bench, home, assessment, entries, item);
      expectations.push(found);
      sights.push({ entries, intent, assessment, about: aboutOf(found), place: found.place });
    }
  }
  const run = {
    title: example.title.text,
    place: placeAt(bench, { ...example.at, end: example.title.at.end }),
    holds: expectations.every(({ holds }) => holds),
    expectations,
  };
  return { run, sights };
}

function isExpect(item: ActNode | ExpectNode): item is ExpectNode {
  return item.kind === 'expect-machine' || item.kind === 'expect-task';
}

function aboutOf({ about }: Expectation): string | null {
  switch (about.kind) {
    case 'task':
      return about.task;
    case 'machine':
      return null;
    default:
      return assertNever(about);
  }
}

function momentOf({ date, time }: ExampleLineNode): Moment {
  const day = dayOf(date.text);
  if (day === null) throw new Error(`unchecked: no such day: ${date.text}`);
  return { day, minute: time === undefined ? null : parseTime(time.text) };
}
