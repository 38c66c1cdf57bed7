import { validateEntry } from '../../engine.js';
import type { Entry, EntryId } from '../../engine.js';
import { link, seal } from './chain.js';
import { entryProblemWords } from './entry-problem-words.js';
import { latestTime, newEntryId } from './entry-id.js';
import type { Chance } from './entry-id.js';
import { sameEntry } from './gather-entries.js';
import { LogbookError } from './logbook-error.js';
import type { Logbook } from './logbook.js';
import { strangeMembers } from './strange-members.js';

type WithoutId<E> = E extends Entry ? Omit<E, 'id'> & { readonly id?: EntryId } : never;
/** An entry to be recorded. The id is given by the logbook unless there is one already (an import, a merge). */
export type Draft = WithoutId<Entry>;

/** The acknowledgement: this entry is in the logbook, as line number `seq` of its chain. */
export interface Receipt {
  readonly id: EntryId;
  /** `null`: the very same entry was there already, nothing was written. */
  readonly seq: number | null;
}

/** What adding entries may be told besides the entries. */
export interface AppendOptions {
  /** Go on although lines were changed after they were written. The new line names them; they stay marked for good. */
  readonly acceptChanges?: boolean;
}

/** What to write, and what may be acknowledged once it is written. */
export interface AppendPlan {
  readonly text: string;
  readonly receipts: readonly Receipt[];
}

/**
 * Works out the lines that record `drafts` after all that is in `logbook`. Pure: nothing is written here.
 *
 * An id that is there with the same content is acknowledged again and not written twice, so that repeating an append is safe.
 *
 * @throws LogbookError `not-an-entry`, `id-taken`, `broken-chain`; then nothing at all is to be written.
 */
export function planAppend(
  path: string,
  logbook: Logbook,
  drafts: readonly Draft[],
  chance: Chance,
  options: AppendOptions = {},
): AppendPlan {
  const accepts = acceptedNow(path, logbook, options);
  const known = new Map(logbook.entries.map((entry) => [entry.id, entry]));
  const lines: string[] = [];
  const receipts: Receipt[] = [];
  let latest = latestTime(known.keys());
  let head = { hash: logbook.head?.hash ?? '', seq: logbook.head?.seq ?? 0 };
  let between = logbook.uncovered;
  for (const draft of drafts) {
    const given = draft.id === undefined ? newEntryId(chance, latest) : null;
    latest = given?.time ?? latest;
    const candidate = { ...draft, ...(given === null ? {} : { id: given.id }) };
    const entry = checked(path, candidate);
    const there = known.get(entry.id);
    if (there !== undefined && !sameEntry(there, entry)) throw new LogbookError({ kind: 'id-taken', path, id: entry.id });
    if (there !== undefined) {
      receipts.push({ id: entry.id, seq: null });
      continue;
    }
    const seq = head.seq + between.length + 1;
    // What we do not know is not used, and not lost either.
    const body = bodyOf({ ...strangeMembers(candidate, entry), ...entry }, seq, lines.length === 0 ? accepts : []);
    head = { seq, hash: link(head.hash, between, body) };
    between = [];
    lines.push(seal(body, head.hash));
    receipts.push({ id: entry.id, seq });
    known.set(entry.id, entry);
  }
  return { text: lines.map((line) => `${line}\n`).join(''), receipts };
}

function acceptedNow(path: string, logbook: Logbook, options: AppendOptions): readonly number[] {
  const broken = logbook.problems.filter(
    (problem) => (problem.kind === 'changed' || problem.kind === 'misnumbered') && problem.acceptedAt === null,
  );
  const lines = broken.map((problem) => problem.line);
  if (lines.length > 0 && options.acceptChanges !== true) throw new LogbookError({ kind: 'broken-chain', path, lines });
  return lines;
}

function checked(path: string, candidate: unknown): Entry {
  const read = validateEntry(candidate);
  if (read.kind === 'entry') return read.entry;
  throw new LogbookError({ kind: 'not-an-entry', path, what: entryProblemWords(read.problems) });
}

/** One line for people: when, what, the rest, and the id last. */
function bodyOf(entry: Entry, seq: number, accepts: readonly number[]): string {
  const { id, on, at, kind, by, note, meters, readings, ...rest } = entry;
  return JSON.stringify({ seq, ...(accepts.length > 0 ? { accepts } : {}), on, at, kind, ...rest, meters, readings, by, note, id });
}
