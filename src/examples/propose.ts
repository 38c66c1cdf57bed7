/**
 * A worked example for what no example shows yet.
 */
import type { DuePoint, TaskAssessment } from '../assess/assessment.js';
import type { Home } from '../check/model.js';
import { nameTable, resolveNames } from '../check/names.js';
import { usesInExample } from '../check/references-in-examples.js';
import type { Amount, RuleGraph, Trigger } from '../graph/rule-graph.js';
import { hasErrors } from '../diagnostics/collect.js';
import { parse } from '../syntax/parse.js';
import type { ExampleNode } from '../syntax/tree.js';
import { numberText } from '../values/number-text.js';
import { unitsOf } from '../values/ticks.js';
import type { Bench } from './bench.js';
import { shows, type Sight } from './coverage.js';
import type { Wanted } from './look-for.js';
import type { CoverageOutcome, Proposal } from './report.js';
import { runExample } from './run-example.js';
import { reach, sceneText, type Scene } from './scene.js';
import { scenesFor } from './scenes.js';

const machine: Home = { prefix: '', host: undefined };

/**
 * Proposes an example that shows one outcome of one part of the rules. It says what the engine says now, which is for the author to
 * agree with or not. `null` where none was found that parses.
 */
export function propose(bench: Bench, wanted: Wanted, outcome: CoverageOutcome): Proposal | null {
  const about = subjectOf(bench.graph, wanted);
  const title = `${cutAtWord(wanted.place.text)}: ${outcome}`;
  let spare: Proposal | null = null;
  for (const start of scenesFor(bench.graph, wanted, outcome)) {
    for (const scene of continued(bench, wanted, outcome, about, start)) {
      const proposal = written(bench, wanted, outcome, about, scene, title);
      if (proposal?.shows === true && proposal.holds) return proposal;
      spare ??= proposal;
    }
  }
  return spare;
}

/** Whom the expectation is about: the task of the part, the task that it asks for, or the machine. */
function subjectOf(graph: RuleGraph, { sign }: Wanted): string | null {
  switch (sign.is) {
    case 'node':
      return sign.task;
    case 'band':
      return graph.tasks.find(({ id }) => id === sign.task)?.reads[sign.reads]?.rules[sign.rule]?.outcome.then[0]?.task ?? null;
    case 'class':
      return (
        graph.defects.find(({ id }) => id === sign.defect)?.rules.find((rule) => rule.class === sign.class)?.outcome.then[0]?.task ?? null
      );
  }
}

/** The scene itself, or gone on to the due point of the limit that is to be reached. */
function continued(bench: Bench, wanted: Wanted, outcome: CoverageOutcome, about: string | null, start: Scene): readonly Scene[] {
  if (outcome !== 'reached' || wanted.sign.is !== 'node') return [start];
  const { node } = wanted.sign;
  const sight = sightOf(bench, about, start);
  const due: DuePoint | null | undefined = sight?.assessment.record[about ?? '']?.find((seen) => seen.node === node)?.limit?.due;
  return due == null ? [start] : [reach(start, due, bench.graph, false), reach(start, due, bench.graph, true)];
}

function written(
  bench: Bench,
  wanted: Wanted,
  outcome: CoverageOutcome,
  about: string | null,
  scene: Scene,
  title: string,
): Proposal | null {
  const sight = sightOf(bench, about, scene);
  if (sight === null) return null;
  const isShown = shows(bench.graph, sight, wanted, outcome);
  for (const expect of expectationsFor(bench.graph, sight)) {
    const text = sceneText(title, scene, expect);
    const read = readExample(bench, text);
    if (read === null) continue;
    if (runExample(read.bench, machine, read.example).run.holds) return { text, shows: isShown, holds: true };
  }
  return null;
}

/** What the engine says at the end of the scene, in the words of the language: with the deciding part where it can be named, and without. */
function expectationsFor(graph: RuleGraph, { assessment, about }: Sight): readonly string[] {
  if (about === null) return [`expect machine ${assessment.verdict}`];
  const task = assessment.tasks.find((each) => each.task === about);
  if (task === undefined) return [];
  const plain = `expect ${about} ${task.state.replace('-', ' ')}`;
  const because =
    task.state === 'due' || task.state === 'overdue'
      ? becauseOf(graph, task, assessment.record[about]?.find(({ node }) => node === task.governing)?.limit?.span ?? null)
      : null;
  return because === null ? [plain] : [`${plain} because ${because}`, plain];
}

function becauseOf(graph: RuleGraph, { governing }: TaskAssessment, span: number | null): string | null {
  const node = governing === null ? undefined : (graph.nodes[governing] as Trigger | undefined);
  if (node === undefined) return null;
  switch (node.kind) {
    case 'stages': {
      const amount = node.amounts.find((each: Amount) => each.on !== 'calendar' && each.ticks === span);
      return amount === undefined ? null : amountText(graph, amount);
    }
    case 'event':
      return `on ${node.event}`;
    case 'asked':
      return node.by.is === 'defect' ? node.by.defect : node.by.task;
    case 'sooner':
      return node.dipstick;
    default:
      return node.origin.text;
  }
}

function amountText(graph: RuleGraph, amount: Amount): string | null {
  switch (amount.on) {
    case 'meter':
      return `${numberText(unitsOf(amount.ticks), 4)} ${graph.meters.find(({ id }) => id === amount.meter)?.unit ?? 'h'} of ${amount.meter}`;
    case 'work':
      return `${numberText(unitsOf(amount.ticks), 4)} h of work${amount.duty === undefined ? '' : ` in ${amount.duty}`}`;
    case 'calendar':
      return null;
  }
}

/** What is seen at the end of a scene. */
function sightOf(bench: Bench, about: string | null, scene: Scene): Sight | null {
  // An expectation of anything will do: what comes of the acts before it is looked at, not whether it holds.
  const read = readExample(bench, sceneText('', scene, 'expect machine ready'));
  const seen = read === null ? undefined : runExample(read.bench, machine, read.example).sights.at(-1);
  return seen === undefined ? null : { ...seen, about };
}

/** An example's text parsed, with its names found in the schedule; `null` if it cannot be read or names what there is not. */
function readExample(bench: Bench, text: string): { readonly bench: Bench; readonly example: ExampleNode } | null {
  const { file, diagnostics } = parse(`part proposal "Proposal"\n${text}`);
  const example = file?.declarations[0];
  if (example?.kind !== 'example' || hasErrors(diagnostics)) return null;
  const references = resolveNames({ node: example, home: machine }, nameTable(bench.model.declarations), usesInExample);
  if (references.some(({ definition }) => definition === undefined)) return null;
  const names = new Map(references.map(({ name, definition }) => [name, definition]));
  const meaning: Bench['meaning'] = (name) => names.get(name) ?? bench.meaning(name);
  // Amounts in a reason are worked out in the model, which finds the names of the proposal there.
  const known = [...names].flatMap(([name, definition]) => (definition === undefined ? [] : [[name, definition] as const]));
  return { bench: { ...bench, meaning, model: { ...bench.model, meaning: new Map([...bench.model.meaning, ...known]) } }, example };
}

/** A title's worth of the author's words. */
function cutAtWord(text: string): string {
  if (text.length <= 60) return text;
  return `${text.slice(0, 60).replace(/\s+\S*$/, '')} …`;
}
