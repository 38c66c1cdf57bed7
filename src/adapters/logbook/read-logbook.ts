import { addTo } from '../../base/gather.js';
import { meantMember, validateEntry } from '../../engine.js';
import type { Entry } from '../../engine.js';
import { sha256 } from '../../base/sha256.js';
import { link, unseal } from './chain.js';
import { entryProblemWords } from './entry-problem-words.js';
import { gather } from './gather-entries.js';
import { strangeMembers } from './strange-members.js';
import type { Logbook, LogbookLine, LogbookProblem } from './logbook.js';

/** What is known of the chain before a line. `hash` is empty and `seq` 0 before the first chained line. */
interface ChainState {
  readonly line: number;
  readonly seq: number;
  readonly hash: string;
}

/** How much of a logbook is read. */
export interface LogbookLimits {
  /** In UTF-16 code units. */
  readonly characters: number;
  readonly lines: number;
}

/** For an owner's own: no machine is written of so much in its life. */
const LIMITS: LogbookLimits = { characters: 16_777_216, lines: 100_000 };

/**
 * Reads the text of a logbook: every line that is an entry counts, everything else is reported by its line and left alone.
 *
 * Pure and total: any text gives a logbook. The bytes of a file are better given to {@link readLogbookBytes}, which knows a torn
 * tail. Carriage returns before line feeds and a byte order mark, as some editors write them, change nothing.
 *
 * @param limits bounds for somebody else's logbook, lower than those for one's own. Of one that is past them nothing is used: part of it would pass
 *   for the whole history.
 * @example readLogbook('{"id":"a","on":"2026-05-12","kind":"reading","meters":{"engine":1300}}\n').entries.length // 1
 */
export function readLogbook(text: string, limits: Partial<LogbookLimits> = {}): Logbook {
  const reader = new LogbookReader();
  const excess = excessOf(text, { ...LIMITS, ...limits });
  if (excess !== null) return reader.refuse(excess);
  splitLines(text).forEach((line, index) => reader.take(line, index + 1));
  return reader.finish();
}

/** As {@link readLogbook}, from bytes; an unfinished last line is reported and not used. */
export function readLogbookBytes(bytes: Uint8Array, limits: Partial<LogbookLimits> = {}): Logbook {
  const end = wholeLines(bytes);
  const logbook = readLogbook(new TextDecoder().decode(bytes.subarray(0, end)), limits);
  if (end === bytes.length) return logbook;
  const line = splitLines(new TextDecoder().decode(bytes.subarray(0, end))).length + 1;
  return { ...logbook, problems: [...logbook.problems, { kind: 'torn-tail', line, bytes: bytes.length - end }] };
}

/**
 * How many bytes are whole lines. A last line without a line feed counts as whole if it is a complete JSON object (an editor left
 * the line feed out, or a writer died just before it): a proper beginning of a JSON object is never itself one.
 */
export function wholeLines(bytes: Uint8Array): number {
  const end = bytes.lastIndexOf(0x0a) + 1;
  if (end === bytes.length) return end;
  try {
    const tail: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(end)));
    return isObject(tail) ? bytes.length : end;
  } catch {
    return end;
  }
}

/** Longest line that is looked at, in UTF-16 code units: an entry with every member at its bound is a good deal shorter. */
const LONGEST_LINE = 65_536;
/**
 * How often in all, in one reading, an earlier line is tried as the origin of a fork, so that a made-up chain does not take for ever. Of a true
 * fork the first one tried is the origin, by its number.
 */
const MOST_FORK_TRIALS = 2000;

/** How many names that no entry has are told of. */
const MOST_STRANGE = 20;

function excessOf(text: string, { characters, lines }: LogbookLimits): string | null {
  const past = (limit: string): string => `past the limit of ${limit}, so that nothing of the logbook is used`;
  if (text.length > characters) return past(`${characters} characters`);
  let found = text === '' || text.endsWith('\n') ? 0 : 1;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) found += 1;
  return found > lines ? past(`${lines} lines`) : null;
}

function splitLines(text: string): string[] {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split('\n')
    .map((line) => (line.endsWith('\r') ? line.slice(0, -1) : line));
  if (lines.at(-1) === '') lines.pop();
  return lines;
}

/** Owns the state of one reading; a class because that state is truly its own. */
class LogbookReader {
  private readonly lines: LogbookLine[] = [];
  private readonly problems: LogbookProblem[] = [];
  private readonly gathering = gather();
  private readonly plainIds = new Map<string, number>();
  private readonly states: ChainState[] = [{ line: 0, seq: 0, hash: '' }];
  private readonly bySeq = new Map<number, ChainState[]>([[0, this.states.slice()]]);
  private readonly strange = new Set<string>();
  private readonly acceptedAt = new Map<number, number>();
  private between: string[] = [];
  private forkTrials = 0;

  take(text: string, line: number): void {
    if (text.trim() === '') return;
    const isLong = text.length > LONGEST_LINE;
    const json = isLong ? null : parseObject(text);
    if (json === null) {
      this.between.push(text);
      const what = isLong ? `longer than the limit of ${LONGEST_LINE} characters` : 'not a JSON object';
      this.problems.push({ kind: 'unreadable', line, what });
      return;
    }
    const sealed = unseal(text);
    const seq = sealed === null ? null : seqOf(json);
    if (sealed === null || seq === null) this.takePlain(text, line, json);
    else this.takeChained(text, line, json, { ...sealed, seq });
  }

  /** Nothing is used, for the reason given. */
  refuse(what: string): Logbook {
    this.problems.push({ kind: 'unreadable', line: 1, what });
    return this.finish();
  }

  finish(): Logbook {
    const last = this.states.at(-1);
    const problems = this.problems.map((problem) =>
      problem.kind === 'changed' || problem.kind === 'misnumbered'
        ? { ...problem, acceptedAt: this.acceptedAt.get(problem.line) ?? null }
        : problem,
    );
    const head = last === undefined || last.hash === '' ? null : { seq: last.seq, hash: last.hash };
    return { entries: [...this.gathering.entries.values()], lines: this.lines, problems, head, uncovered: this.between };
  }

  private takePlain(text: string, line: number, json: object): void {
    this.between.push(text);
    this.lines.push({ kind: 'plain', line, text, entry: this.takeEntry(this.withId(json), line) });
  }

  private takeChained(text: string, line: number, json: object, sealed: { body: string; hash: string; seq: number }): void {
    this.checkLink(line, sealed);
    const accepts = acceptsOf(json);
    for (const accepted of accepts) this.acceptedAt.set(accepted, line);
    const state = { line, seq: sealed.seq, hash: sealed.hash };
    this.states.push(state);
    addTo(this.bySeq, state.seq, state);
    this.between = [];
    this.lines.push({ kind: 'chained', line, text, entry: this.takeEntry(json, line), seq: sealed.seq, hash: sealed.hash, accepts });
  }

  private checkLink(line: number, sealed: { body: string; hash: string; seq: number }): void {
    const before = this.states.at(-1);
    const fits = (state: ChainState, between: readonly string[]): boolean => link(state.hash, between, sealed.body) === sealed.hash;
    if (before !== undefined && fits(before, this.between)) {
      this.checkNumber(line, sealed.seq, before.seq + this.between.length + 1);
      return;
    }
    const origin = this.between.length === 0 ? this.originOf(sealed.seq, (state) => fits(state, [])) : undefined;
    if (origin === undefined) this.problems.push({ kind: 'changed', line, acceptedAt: null });
    else this.problems.push({ kind: 'fork', line, from: origin.line });
  }

  private originOf(seq: number, fits: (state: ChainState) => boolean): ChainState | undefined {
    for (const states of [this.bySeq.get(seq - 1) ?? [], this.states]) {
      for (const state of states) {
        if (this.forkTrials >= MOST_FORK_TRIALS) return undefined;
        this.forkTrials += 1;
        if (fits(state)) return state;
      }
    }
    return undefined;
  }

  private checkNumber(line: number, seq: number, expected: number): void {
    if (seq !== expected) this.problems.push({ kind: 'misnumbered', line, expected, acceptedAt: null });
  }

  private takeEntry(json: object, line: number): Entry | null {
    const read = validateEntry(json);
    if (read.kind === 'problems') {
      this.problems.push({ kind: 'unreadable', line, what: entryProblemWords(read.problems) });
      return null;
    }
    this.tellStrange(json, read.entry, line);
    const added = this.gathering.add(read.entry);
    if (added.kind === 'conflict') this.problems.push({ kind: 'same-id', line, id: added.id, kept: added.kept });
    return added.kind === 'conflict' ? added.second : read.entry;
  }

  /** Each name once: whoever adds a member of their own to every line knows after the first. */
  private tellStrange(json: object, entry: Entry, line: number): void {
    for (const name of Object.keys(strangeMembers(json, entry))) {
      if (this.strange.has(name) || this.strange.size >= MOST_STRANGE) continue;
      this.strange.add(name);
      this.problems.push({ kind: 'strange-member', line, name, meant: meantMember(entry.kind, name) });
    }
  }

  /** A hand-written line need not have an id: it gets one from what it says, the same in every copy. */
  private withId(json: object): object {
    if ('id' in json) return json;
    const base = `plain-${sha256(spelled(json)).slice(0, 12)}`;
    const count = (this.plainIds.get(base) ?? 0) + 1;
    this.plainIds.set(base, count);
    return { ...json, id: count === 1 ? base : `${base}-${count}` };
  }
}

function parseObject(text: string): object | null {
  try {
    const json: unknown = JSON.parse(text);
    return isObject(json) ? json : null;
  } catch {
    return null;
  }
}

/** JSON as it is written anew; for one that is nested beyond what can be written, and so is no entry, nothing. */
function spelled(json: object): string {
  try {
    return JSON.stringify(json);
  } catch {
    return '';
  }
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function seqOf(json: object): number | null {
  return 'seq' in json && typeof json.seq === 'number' && Number.isInteger(json.seq) && json.seq > 0 ? json.seq : null;
}

function acceptsOf(json: object): readonly number[] {
  const accepts: unknown = 'accepts' in json ? json.accepts : [];
  return Array.isArray(accepts) ? accepts.filter((line): line is number => Number.isInteger(line)) : [];
}
