import type { Origin, RuleGraph } from '../graph/rule-graph.js';
import type { Entry, EntryId } from '../history/entry.js';
import { layOut } from '../history/lay-out.js';
import type { Moment } from '../values/moment.js';
import type { Assessment, AssessOptions } from './assessment.js';
import type { Kinds, KindSet } from './kinds.js';
import { type Need, needsOf, needsOfEntries } from './needs-of.js';
import { run } from './run.js';

/** Something that a schedule or a history asks for and the engine was not given. */
export interface Lack {
  readonly code: 'kind-not-carried';
  /** What it is: a kind of rule, of axis, of entry … as the rule graph and the entries name it. */
  readonly kind: string;
  /** Where the schedule says it; `null` where an entry asks for it. */
  readonly origin: Origin | null;
  readonly entry: EntryId | null;
  /** One sentence without a line break. */
  readonly message: string;
  readonly help: string;
}

/** What became of a question to an engine that carries some kinds only. */
export type Answer =
  { readonly kind: 'assessment'; readonly assessment: Assessment } | { readonly kind: 'refused'; readonly lacks: readonly Lack[] };

/** An engine that carries some kinds only. */
export interface Engine {
  /**
   * As `assess`, and the same answer byte for byte; but refuses a schedule or a history that asks for anything that is not carried, before
   * it answers anything.
   *
   * @throws BudgetError as `assess` does.
   */
  readonly assess: (graph: RuleGraph, entries: readonly Entry[], now: Moment, options?: AssessOptions) => Answer;
  /** What a schedule, and a history with it, would be refused for: nothing where they would be answered. */
  readonly lacks: (graph: RuleGraph, entries?: readonly Entry[]) => readonly Lack[];
}

/**
 * An engine of just those kinds of rule, condition and entry that your schedules ask for, so that a bundle carries no others. `kindsOf` says
 * which sets a schedule takes.
 *
 * A name that the schedule does not have is reported without the one that was probably meant, unless `suggestions` are among the sets.
 *
 * @example
 * const engine = engineWith([intervals, calendar]);
 * const answer = engine.assess(graph, entries, now);
 * if (answer.kind === 'assessment') show(answer.assessment);
 */
export function engineWith(sets: readonly KindSet[]): Engine {
  const kinds = together(sets);
  const carried = TABLES.flatMap((table) => Object.keys(kinds[table]));
  // Every engine reads these.
  const read = ['machine', 'reading', 'done', 'finding', ...sets.flatMap((set) => set.entries ?? [])];
  const known = new WeakMap<RuleGraph, readonly Lack[]>();
  const lacks = (graph: RuleGraph, entries: readonly Entry[] = []): readonly Lack[] => {
    const ofGraph = known.get(graph) ?? lacking(carried, needsOf(graph));
    known.set(graph, ofGraph);
    return [...ofGraph, ...lacking(read, needsOfEntries(entries))];
  };
  const assess = (graph: RuleGraph, entries: readonly Entry[], now: Moment, options: AssessOptions = {}): Answer => {
    const lacked = lacks(graph, entries);
    if (lacked.length > 0) return { kind: 'refused', lacks: lacked };
    return { kind: 'assessment', assessment: run(kinds, graph, layOut(kinds.facts, entries, graph, now), now, options) };
  };
  return { assess, lacks };
}

/** The tables of what can be carried; the kinds of entry stand in a list. */
const TABLES = ['triggers', 'conditions', 'axes', 'aspects', 'facts'] as const;

/** All that some sets have, as one. */
function together(sets: readonly KindSet[]): Omit<Kinds, 'entries'> {
  const tables = TABLES.map((table) => [table, Object.assign({}, ...sets.map((set) => set[table]))] as const);
  return Object.fromEntries(tables) as unknown as Omit<Kinds, 'entries'>;
}

/** Those of some needs that are not among what is carried. */
function lacking(carried: readonly string[], needs: readonly Need[]): readonly Lack[] {
  return needs
    .filter(({ kind }) => !carried.includes(kind))
    .map((need) => ({
      code: 'kind-not-carried',
      ...need,
      message: `${need.origin === null ? `Entry \`${need.entry ?? ''}\`` : `Line ${need.origin.line} of the schedule`} asks for \`${need.kind}\`, which this engine was not given`,
      help: 'Give `engineWith` the sets that `kindsOf` names, or ask `assess`.',
    }));
}
