import type { Intent } from '../../engine.js';
import { type Parsed, refused, understood } from './parsed.js';
import { parseMinute } from './parse-when.js';

/** An outing that somebody intends. */
export type IntendedOuting = NonNullable<Intent['outing']>;

/** The example that every message about `--work` shows. */
export const workExample = '3 h in tall-growth with flail-mower from 08:00';

type Part = Partial<{ -readonly [K in keyof IntendedOuting]: IntendedOuting[K] }>;
type Reader = (words: readonly string[]) => Parsed<Part>;

/** Each part opens with its own word, as in the language's `outing`; how long it takes stands first and has none. */
const readers: Readonly<Record<string, Reader>> = {
  for: readHours,
  in: (words) => readNames('in', words, (duties) => ({ duties })),
  with: (words) => readNames('with', words, (attachments) => ({ attachments })),
  from: readStart,
  shift: (words) => (words.length === 1 ? understood({ shift: words.join('') }) : refused('After `shift` stands the name of one shift.')),
};

/**
 * Reads the work that is intended: `3 h in tall-growth with flail-mower from 08:00`, in any order, each part at will.
 *
 * An empty text is work of which nothing more is known. Whether the names exist is for the schedule to say.
 *
 * @example parseWork('90 min with flail-mower') // { ok: true, value: { hours: 1.5, attachments: ['flail-mower'] } }
 */
export function parseWork(text: string): Parsed<IntendedOuting> {
  let outing: Part = {};
  for (const [opener, words] of partsOf(text)) {
    const read = readers[opener]?.(words) ?? refused<Part>(`\`${opener}\` is not a part of intended work.`);
    if (!read.ok) return refused(`${read.problem} Write it like \`--work "${workExample}"\`.`);
    const twice = Object.keys(read.value).find((key) => key in outing);
    if (twice !== undefined) return refused(`The ${twice} of the intended work stand twice in \`${text}\`.`);
    outing = { ...outing, ...read.value };
  }
  return understood(outing);
}

function partsOf(text: string): readonly (readonly [string, readonly string[]])[] {
  const parts: [string, string[]][] = [];
  for (const word of text.split(/[\s,]+/).filter((each) => each !== '')) {
    const last = parts.at(-1);
    if (Object.hasOwn(readers, word)) parts.push([word, []]);
    else if (last === undefined) parts.push(['for', [word]]);
    else last[1].push(word);
  }
  return parts;
}

function readHours(words: readonly string[]): Parsed<Part> {
  const written = words.join(' ');
  const [, number = '', unit = ''] = /^(\d+(?:\.\d+)?) ?(h|min)$/.exec(written) ?? [];
  const hours = unit === 'min' ? Number(number) / 60 : Number(number);
  if (unit === '' || hours <= 0 || hours > 24) return refused(`\`${written}\` is not a length of work up to 24 h.`);
  return understood({ hours });
}

function readNames(opener: string, words: readonly string[], part: (names: readonly string[]) => Part): Parsed<Part> {
  const names = words.filter((word) => word !== 'and');
  return names.length === 0 ? refused(`After \`${opener}\` stand one or more names.`) : understood(part(names));
}

function readStart(words: readonly string[]): Parsed<Part> {
  const minute = parseMinute(words.join(' '));
  return minute === null ? refused(`\`${words.join(' ')}\` is not a time of day.`) : understood({ start: minute });
}
