import type { RuleGraph } from '../../../engine.js';
import type { LooseDraft } from './loose-draft.js';
import { clauses } from './record-clauses.js';
import type { Part } from './draft-part.js';
import { meantVerb, strayOption } from './meant-verb.js';
import { verbs } from './record-verbs.js';

/** What a few words said, or one sentence on what is not understood. */
export type Words = { readonly kind: 'said'; readonly draft: LooseDraft } | { readonly kind: 'not-understood'; readonly problem: string };

/** The verbs of recording, each with an example. */
export const RECORD_EXAMPLES: readonly string[] = [
  'hours 1302.4',
  'read coolant 92, engine-oil low',
  'done change-engine-oil, grease-loader at 1304 used 6.6 engine-oil-15w40, 1 oil-filter took 40 min by Kim',
  'outing 3 h in tall-growth with flail-mower from 08:00 to 11:00 at 1307',
  'found "a drop under the pump" task hydraulic-oil-level',
  'defect hydraulic-seep wetness',
  'mended hydraulic-seep',
  'top-up engine-oil 0.4',
  'event wheel-refit',
  'attach flail-mower',
  'detach flail-mower',
  'refuelled 40',
  'storage begins',
  'replaced engine final 1302.4 initial 0',
  'states change-engine-oil before 2025-01-01 at 1200',
  'machine "Tarn 55" serial 1234 since 2024-03-01',
  'void 1jw3k8m2a-x7q4f0t note "read the wrong dial"',
  'confirm 1jw3k8m2a-x7q4f0t',
];

/**
 * Reads a few words as an entry: a verb, what it is about, then clauses in any order, each opened by its own word (`at 1304`,
 * `on 2026-05-13 07:40`, `by Kim`, `note "…"`, `used …`, `took …`, `reads …`, `in …`, `with …`, `from …`, `to …`).
 *
 * One word with spaces in it is all of them, put into quotation marks; in it a text stands between quotation marks of its own.
 *
 * A number without a meter is on the first meter of the schedule. Names are not checked here, see {@link completeDraft}.
 *
 * @example parseRecordWords(graph, ['hours', '1302.4']) // { kind: 'said', draft: { kind: 'reading', meters: { engine: 1302.4 } } }
 */
export function parseRecordWords(graph: RuleGraph, given: readonly string[]): Words {
  const words = given.length === 1 ? wordsOf(given[0] ?? '') : given;
  const [verb = '', ...rest] = words;
  const stray = strayOption(words, [...clauses.keys()]);
  if (stray !== null) return { kind: 'not-understood', problem: stray };
  const read = verbs.get(verb);
  if (read === undefined) return { kind: 'not-understood', problem: noVerb(graph, words) };
  const [head, ...tails] = split(rest, read.opens);
  const comma = decimalComma([
    ...(verb === 'found' ? [] : (head?.words ?? [])),
    ...tails.flatMap(({ opener, words: said }) => (TEXTS.has(opener) ? [] : said)),
  ]);
  if (comma !== null) return { kind: 'not-understood', problem: comma };
  let draft: LooseDraft = { kind: read.kind };
  const parts: readonly (() => Part)[] = [
    () => read.head(graph, head?.words ?? []),
    ...tails.map((tail) => () => clauses.get(tail.opener)?.(graph, tail.words, draft) ?? ''),
  ];
  for (const part of parts) {
    const said = part();
    if (typeof said === 'string') return { kind: 'not-understood', problem: said };
    draft = joined(draft, said);
  }
  return { kind: 'said', draft };
}

/** Clauses whose words are anybody's. */
const TEXTS: ReadonlySet<string> = new Set(['by', 'note', 'words']);

/** A comma stands between things, so that `1302,4` would be two. */
function decimalComma(words: readonly string[]): string | null {
  const found = words.find((word) => /^\d+,\d+$/.test(word));
  if (found === undefined) return null;
  return `\`${found}\` has a comma: write \`${found.replace(',', '.')}\`, or a space after the comma between two values.`;
}

function wordsOf(sentence: string): readonly string[] {
  return [...sentence.matchAll(/"([^"]*)"|[^\s"]+/g)].map(([word, text]) => text ?? word);
}

function noVerb(graph: RuleGraph, words: readonly string[]): string {
  const known = [...verbs.keys()];
  return `\`${words[0] ?? ''}\` is nothing that can be recorded. ${meantVerb(graph, known, words) ?? `Say ${known.join(', ')}.`}`;
}

function split(words: readonly string[], opens: ReadonlySet<string>): { opener: string; words: string[] }[] {
  const parts: { opener: string; words: string[] }[] = [{ opener: '', words: [] }];
  for (const word of words) {
    if (opens.has(word)) parts.push({ opener: word, words: [] });
    else parts.at(-1)?.words.push(word);
  }
  return parts;
}

/** Maps are added to, everything else is replaced. */
function joined(draft: LooseDraft, said: Partial<LooseDraft>): LooseDraft {
  return {
    ...draft,
    ...said,
    ...(said.meters === undefined ? {} : { meters: { ...draft.meters, ...said.meters } }),
    ...(said.readings === undefined ? {} : { readings: { ...draft.readings, ...said.readings } }),
    ...(said.used === undefined ? {} : { used: { ...draft.used, ...said.used } }),
  };
}
