/**
 * A schedule that is made of several files.
 */
import type { FileNode, HeaderNode, TextNode } from '../../syntax/tree.js';
import { idIn, type Home, type PlacedDeclaration } from '../model.js';
import { diagnostic } from '../report.js';
import { clausesOf } from '../clauses-of.js';
import type { Bring } from './gather.js';
import { localPath } from './local-path.js';
import { openLed } from './open-led.js';
import type { Lead, OpenFile, Shelf } from './shelf.js';
import { vary } from './vary.js';

/** A schedule's own declarations, those of the parts it uses, worked into the base that it varies, and the schedules of its attachments, mounted. */
export const bringAll: Bring = (shelf, headers, file, home) => mounted(shelf, headers, file, [file.path], home);

/** A schedule's declarations and those of its attachments' schedules. */
function mounted(shelf: Shelf, headers: HeaderNode[], file: OpenFile, trail: readonly string[], home: Home): readonly PlacedDeclaration[] {
  const own = whole(shelf, headers, file, trail, home);
  const mounts = own.flatMap(({ node }) => {
    if (node.kind !== 'attachment' || node.follows === undefined) return [];
    const opened = open(shelf, 'follows', node.follows, trailOf(shelf, node.follows, trail));
    if (opened === undefined) return [];
    const inner = shelf.homeOf(idIn(home, node.name.text), home);
    return mounted(shelf, headers, opened, [...trailOf(shelf, node.follows, trail), opened.path], inner);
  });
  return [...own, ...mounts];
}

/** One file with the parts it uses and the base it varies. */
function whole(shelf: Shelf, headers: HeaderNode[], file: OpenFile, trail: readonly string[], home: Home): readonly PlacedDeclaration[] {
  const { tree } = file;
  headers.push(tree.header);
  const parts = usedParts(shelf, headers, tree, trail, home, new Set());
  const own = [...parts, ...tree.declarations.map((node) => ({ node, home }))];
  const varies = clausesOf(tree.header.clauses, 'varies')[0];
  if (tree.header.role !== 'variant' || varies === undefined) return vary(shelf, [], own, tree.header.role);
  const base = open(shelf, 'varies', varies.path, trail);
  if (base === undefined) return own.filter(({ node }) => node.kind !== 'change' && node.kind !== 'remove');
  return vary(shelf, whole(shelf, headers, base, [...trail, base.path], home), own, 'variant');
}

/** The declarations of parts, each part once however many ways lead to it. */
function usedParts(
  shelf: Shelf,
  headers: HeaderNode[],
  tree: FileNode,
  trail: readonly string[],
  home: Home,
  seen: Set<string>,
): readonly PlacedDeclaration[] {
  return clausesOf(tree.header.clauses, 'use').flatMap(({ path }) => {
    const led = localPath(trail.at(-1) ?? '', path.text);
    // Taken already: not read again, unless it leads back, which has to be said.
    if ('path' in led && seen.has(led.path) && !trail.includes(led.path)) return [];
    const part = open(shelf, 'use', path, trail);
    if (part === undefined || seen.has(part.path)) return [];
    seen.add(part.path);
    headers.push(part.tree.header);
    const inner = usedParts(shelf, headers, part.tree, [...trail, part.path], home, seen);
    return [...inner, ...part.tree.declarations.map((node) => ({ node, home }))];
  });
}

function open(shelf: Shelf, word: Lead['word'], path: TextNode, trail: readonly string[]): OpenFile | undefined {
  const file = openLed(shelf, { word, at: path.at, written: path.text, trail });
  if (file === undefined) {
    shelf.complete = false;
    return undefined;
  }
  const { header } = file.tree;
  const wanted = { use: 'a part', varies: 'a schedule or a variant', follows: 'a schedule `for attachment`' }[word];
  const fits = {
    use: header.role === 'part',
    varies: header.role !== 'part',
    follows: header.role !== 'part' && clausesOf(header.clauses, 'for-attachment').length > 0,
  }[word];
  if (fits) return file;
  shelf.complete = false;
  const message = `\`${word}\` wants ${wanted}, but \`${path.text}\` is a ${header.role}.`;
  shelf.diagnostics.push(
    diagnostic('wrongRole', { at: path.at, message, labels: [{ at: header.at, text: 'it says so here' }], help: helpFor(word) }),
  );
  return undefined;
}

function helpFor(word: Lead['word']): string {
  if (word === 'use') return 'Begin the other file with `part`, or take what the two share into a part.';
  return word === 'varies'
    ? 'Name the schedule that this one is a variant of.'
    : "Write `for attachment` in the header of the attachment's schedule.";
}

/** Paths in a part are looked for beside the part, so a mount written in one starts from there. */
function trailOf(shelf: Shelf, written: TextNode, trail: readonly string[]): readonly string[] {
  const path = shelf.sources[written.at.file]?.name;
  return path === undefined || path === trail.at(-1) ? trail : [...trail, path];
}
