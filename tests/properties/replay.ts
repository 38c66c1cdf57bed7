/**
 * The five properties that explanations are held to (docs/meaning.md §9). Each tells what is wrong with one situation; nothing, if all is well.
 */
import fc from 'fast-check';
import { assess } from '../../src/assess/assess.js';
import { applyChange, justShort } from '../../src/explain/apply-change.js';
import { explain } from '../../src/explain/explain.js';
import type { CitedEntry, RuleFacts } from '../../src/explain/explanation.js';
import type { Entry } from '../../src/history/entry.js';
import { numbersOf } from './numbers-of.js';
import { anyCase, assessed, type Case, looksAtSeries, oneADay, showAnew, taskOf } from './situation.js';

/** What is wrong, in words. */
export type Faults = readonly string[];

/** The cited entries alone give the same state and due point. */
export function insufficient(each: Case): Faults {
  const assessment = assessed(each, each.entries, each.now);
  return assessment.tasks.flatMap(({ task, state, due }) => {
    const cited = explain(each.graph, assessment, each.entries, task).entries.map(({ entry }) => entry);
    const again = taskOf(assessed(each, cited, each.now), task);
    const [whole, alone] = [JSON.stringify({ state, due }), JSON.stringify({ state: again.state, due: again.due })];
    return whole === alone ? [] : [`${task} is ${whole}; by ${cited.map(({ id }) => id).join(', ')} alone ${alone}`];
  });
}

/** What is cited only so that a reading counts, or does not: it matters where that reading would. */
function isForAnother({ id, refutes, confirms }: CitedEntry, all: readonly CitedEntry[]): boolean {
  return refutes !== undefined || confirms !== undefined || all.some((other) => other.confirms === id);
}

/** Outings fill all that the meter shows with their duties: what one of them took the others could have. */
function isFilled(rule: RuleFacts | null): boolean {
  return rule !== null && (rule.shares?.some(({ duty, ticks }) => duty === null && ticks === 0) === true || rule.parts.some(isFilled));
}

/** Leaving out any cited entry changes the state, the due point or the numbers. */
export function notMinimal(any: Case): Faults {
  // Where two entries of one day say the same, or two show the same total, either can stand in for the other.
  const each = { ...any, entries: showAnew(oneADay(any.entries)) };
  const assessment = assessed(each, each.entries, each.now);
  // A beat is followed through every doing, a consumption through every level: all are cited, whether or not each moved the result.
  const tasks = assessment.tasks.filter(({ task }) => !looksAtSeries(each.graph, task));
  return tasks.flatMap(({ task }) => {
    const { entries: citations, rule } = explain(each.graph, assessment, each.entries, task);
    const cited = citations.map(({ entry }) => entry);
    const said = (entries: readonly Entry[]): string => numbersOf(explain(each.graph, assessed(each, entries, each.now), entries, task));
    const whole = said(cited);
    return citations
      .filter((citation) => !isForAnother(citation, citations) && !(citation.entry.kind === 'outing' && isFilled(rule)))
      .filter((citation) => said(cited.filter((entry) => entry !== citation.entry)) === whole)
      .map(({ id }) => `${task} says the same without ${id}`);
  });
}

/** Each stated change has the stated effect, and just short of it has not. */
export function untrueChanges(each: Case): Faults {
  const assessment = assessed(each, each.entries, each.now);
  return assessment.tasks.flatMap(({ task }) =>
    explain(each.graph, assessment, each.entries, task).changes.flatMap((change) => {
      const after = applyChange(change, each.entries, each.now);
      const becomes = taskOf(assessed(each, after.history, after.now), task).state;
      const short = justShort(change, each.entries, each.now);
      const shortOf = taskOf(assessed(each, short.history, short.now), task).state;
      const said = `${task}, ${JSON.stringify(change)}`;
      return [
        ...(becomes === change.becomes ? [] : [`${said}: becomes ${becomes}`]),
        ...(shortOf === change.becomes ? [`${said}: just short of it too`] : []),
      ];
    }),
  );
}

/** The same inputs give the same bytes, in whatever order the entries come. */
export function unstable(each: Case, shuffled: readonly Entry[]): Faults {
  const one = assessed(each, each.entries, each.now);
  const other = assessed(each, shuffled, each.now);
  if (JSON.stringify(one) !== JSON.stringify(other)) return ['the assessment depends on the order'];
  return one.tasks.flatMap(({ task }) => {
    const [here, there] = [explain(each.graph, one, each.entries, task), explain(each.graph, other, shuffled, task)];
    return JSON.stringify(here) === JSON.stringify(there) ? [] : [`the explanation of ${task} depends on the order`];
  });
}

/** States, verdict and step count do not depend on whether anybody asked. */
export function notFree(each: Case): Faults {
  const asked = assessed(each, each.entries, each.now);
  const before = JSON.stringify(asked);
  for (const { task } of asked.tasks) explain(each.graph, asked, each.entries, task);
  const unasked = assess(each.graph, each.entries, each.now, { ...each.options, withoutRecord: true });
  const bare = (assessment: typeof asked): string => JSON.stringify({ ...assessment, record: {}, stopRecord: [] });
  return [
    ...(JSON.stringify(asked) === before ? [] : ['explaining changed the assessment']),
    ...(bare(asked) === bare(unasked) ? [] : ['the answer depends on whether anybody asked']),
  ];
}

/** A situation, and its entries in another order. */
export const anyReplay = anyCase.chain((each) =>
  fc.shuffledSubarray([...each.entries], { minLength: each.entries.length }).map((shuffled) => ({ each, shuffled })),
);

/** Property → what is wrong with a situation. */
export const PROPERTIES = {
  sufficient: ({ each }) => insufficient(each),
  minimal: ({ each }) => notMinimal(each),
  'true to its changes': ({ each }) => untrueChanges(each),
  stable: ({ each, shuffled }) => unstable(each, shuffled),
  free: ({ each }) => notFree(each),
} as const satisfies Readonly<Record<string, (given: { readonly each: Case; readonly shuffled: readonly Entry[] }) => Faults>>;
