/**
 * What could stand at a place in a declaration that is still being written.
 *
 * The grammar itself is asked: a word fits if the declaration as far as it is written, with that word after it, has nothing wrong up to the end
 * of the word. What a name would mean there is read from the tree that a made-up name gives, completed in one of a few ways if need be.
 */
import { usesIn } from '../check/references.js';
import { usesInExample } from '../check/references-in-examples.js';
import type { NameKind } from '../check/model.js';
import { chunksOf } from '../syntax/chunks.js';
import { parse } from '../syntax/parse.js';
import { readTokens } from '../syntax/read-tokens.js';
import type { DeclarationNode } from '../syntax/tree.js';

/** A declaration up to the cursor. */
export interface Draft {
  /** Without the word that is being typed. */
  readonly written: string;
  /** The word that is being typed; empty after a space. */
  readonly typed: string;
  /** Whether it is the header of the file and not a declaration. */
  readonly isHeader: boolean;
}

/** The nodes above a made-up word, the declaration first, each with the key under which the next one stands. */
export interface Site {
  readonly declaration: DeclarationNode;
  readonly path: readonly { readonly node: object; readonly kind: string; readonly key: string }[];
  /** What it was read as. */
  readonly leaf: 'name' | 'unit';
  /** For a name that means a declared thing, what that can be. */
  readonly kinds: readonly NameKind[] | undefined;
}

const HEADER = 'schedule probe "Probe" language 1\n';
const MADE_UP = 'zz-probe';

/** Ways of going on after a name; where the grammar wants more, one of them is enough for the clause to be read. */
const ENDINGS = [
  '', ' is zz-other', ' above 1', ' now', ' 1 h', ' every 1 days', ' above 1 every 1 days', ' takes to fall to low', ' to zz-other 1 min',
  ' 1 min', ' zz-other to zz-other', ' to zz-other', ' fine', ' due', ' reads 1', ' every 1 days of zz-other',
] as const; // prettier-ignore

/** The draft at an offset; undefined inside a text or a comment. */
export function draftAt(text: string, offset: number): Draft | undefined {
  let start = 0;
  let piece = '';
  let first = true;
  for (const chunk of chunksOf(text)) {
    if (start + chunk.length >= offset && !(start === offset && start > 0)) {
      piece = chunk;
      break;
    }
    start += chunk.length;
    first = false;
  }
  const before = piece.slice(0, offset - start);
  const line = before.slice(Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r')) + 1);
  if (/^(?:[^"#]|"(?:[^"\\]|\\.)*")*(?:#.*|"(?:[^"\\]|\\.)*)$/.test(line)) return undefined;
  const typed = /[\p{L}\d][\p{L}\d.'·°-]*$/u.exec(before)?.[0] ?? '';
  return { written: shortened(before.slice(0, before.length - typed.length), first), typed, isHeader: first };
}

/** Leaves out what is finished, so that the grammar is quick to answer: all clauses but the last, or all lines of an example but the last. */
function shortened(written: string, isHeader: boolean): string {
  if (isHeader) return written;
  const node = parse(HEADER + written).file?.declarations.at(-1);
  const parts = node === undefined ? [] : 'clauses' in node ? node.clauses : node.kind === 'example' ? node.lines : [];
  const [first, last] = [parts[0], parts.at(-1)];
  if (first === undefined || last === undefined || first === last) return written;
  return written.slice(0, first.at.start - HEADER.length) + written.slice(last.at.start - HEADER.length);
}

/** What the grammar wants to see after a word before it takes the word for what it is. */
const GOES_ON: ReadonlyMap<string, string> = new Map([
  ...['month', 'months', 'year', 'years'].map((word) => [word, ' on 1 November'] as const),
  ...['quarter', 'half-year'].map((word) => [word, ' 2 times'] as const),
  ['not', ' counting storage'],
  ['counting', ' storage'],
  ['is', ' zz-other'],
  ['worse', ' than zz-other'],
  ['at', ' zz-other'],
  ['for', ' attachment'],
]);

/** Says of words whether they can stand where the draft ends. */
export function fitting(draft: Draft): (word: string) => boolean {
  const before = (draft.isHeader ? '' : HEADER) + draft.written;
  const last = readTokens(before).at(-1)?.end ?? 0;
  return (word) => {
    const end = before.length + word.length;
    const accepts = (more: string): boolean => !parse(before + word + more).diagnostics.some(({ at }) => at.end >= last && at.start < end);
    const more = GOES_ON.get(word);
    return accepts('') || (more !== undefined && accepts(more));
  };
}

/** What a name or a unit would be where the draft ends; undefined where neither can stand. */
export function siteAt(draft: Draft): Site | undefined {
  if (draft.isHeader) return undefined;
  const before = HEADER + draft.written;
  const [at, last] = [before.length, readTokens(before).at(-1)?.end ?? 0];
  for (const ending of ENDINGS) {
    const { file, diagnostics } = parse(`${before}${MADE_UP}${ending}`);
    // With a mistake up to here it would be read as the beginning of something else.
    const declaration = diagnostics.some((each) => each.at.end >= last && each.at.start <= at) ? undefined : file?.declarations.at(-1);
    const found = declaration === undefined ? undefined : findAt(declaration, at, []);
    if (declaration === undefined || found === undefined) continue;
    const kinds = usesIn(declaration, usesInExample).find(({ name }) => name.at.start === at)?.kinds;
    // What is declared is the author's to name.
    return { declaration, path: found.path, leaf: found.leaf, kinds };
  }
  return undefined;
}

interface Found {
  readonly path: Site['path'];
  readonly leaf: Site['leaf'];
}

function findAt(node: object, at: number, path: Site['path']): Found | undefined {
  const kind = 'kind' in node && typeof node.kind === 'string' ? node.kind : '';
  if ((kind === 'name' || kind === 'unit') && 'text' in node && 'at' in node && node.text === MADE_UP && startOf(node.at) === at)
    return { path, leaf: kind };
  for (const [key, child] of Object.entries(node) as readonly (readonly [string, unknown])[]) {
    if (typeof child !== 'object' || child === null || key === 'at') continue;
    const found = findAt(child, at, kind === '' ? path : [...path, { node, kind, key }]);
    if (found !== undefined) return found;
  }
  return undefined;
}

function startOf(at: unknown): number | undefined {
  return typeof at === 'object' && at !== null && 'start' in at && typeof at.start === 'number' ? at.start : undefined;
}
