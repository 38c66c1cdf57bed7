/**
 * The files of one compilation: each is fetched from the host once, and parsed anew for each place where it is wanted, so
 * that every mount of an attachment's schedule has a tree of its own.
 */
import { sourceText, type SourceText } from '../../base/source-text.js';
import type { Span } from '../../base/span.js';
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { ParseResult } from '../../syntax/parse-on.js';
import type { FileNode } from '../../syntax/tree.js';
import type { Home } from '../model.js';
import { diagnostic } from '../report.js';
import type { Limits } from './limits.js';
import { localPath } from './local-path.js';

/** Gives the text of a path, or undefined where there is no such file. */
export type Loader = (path: string) => string | undefined;

export interface Shelf {
  readonly load: Loader;
  readonly limits: Limits;
  /** Reads one file's text; for each place where the file is wanted once, in the same order every time. */
  readonly parse: (source: SourceText, index: number) => ParseResult;
  /** The home of an attachment's own things; the same object for the same attachment. */
  readonly homeOf: (prefix: string, host: Home) => Home;
  readonly sources: SourceText[];
  readonly diagnostics: Diagnostic[];
  /** Names of declarations that could not be read. */
  readonly unread: Set<string>;
  /** How often a file has been opened, the same one again included: what a mount costs. */
  opened: number;
  /** Whether what every file declares is known: false once one that is wanted could not be opened. */
  complete: boolean;
}

/** How one file leads to another. */
export interface Lead {
  readonly word: 'use' | 'varies' | 'follows';
  /** The path as written, for the diagnostic to point at. */
  readonly at: Span;
  readonly written: string;
  /** Paths from the file that was asked for to the one that says this. */
  readonly trail: readonly string[];
}

export interface OpenFile {
  readonly path: string;
  readonly tree: FileNode;
}

/** Opens the file that was asked for. */
export function openFirst(shelf: Shelf, path: string): FileNode | undefined {
  const text = shelf.load(path);
  const source = sourceText(path, text ?? '');
  shelf.sources.push(source);
  if (text === undefined) {
    shelf.diagnostics.push(diagnostic('fileNotFound', { at: { file: 0, start: 0, end: 0 }, message: `There is no file \`${path}\`.` }));
    return undefined;
  }
  return parseSource(shelf, source, 0, true);
}

/** Opens the file that a clause names; says why where it cannot. */
export function openLed(shelf: Shelf, lead: Lead): OpenFile | undefined {
  const from = lead.trail.at(-1) ?? '';
  const found = localPath(from, lead.written);
  if ('refused' in found) return refuse(shelf, lead, found.refused);
  const { path } = found;
  if (lead.trail.includes(path)) return loop(shelf, lead, path);
  if (lead.trail.length > shelf.limits.depth) return tooMuch(shelf, lead, `files lead to one another more than ${shelf.limits.depth} deep`);
  const { files } = shelf.limits;
  if (shelf.opened >= 2 * files) return tooMuch(shelf, lead, `files may be opened at most ${2 * files} times, the same one again included`);
  shelf.opened += 1;
  const known = shelf.sources.findIndex((source) => source.name === path);
  const tree = known >= 0 ? parseSource(shelf, shelf.sources[known], known, false) : openNew(shelf, lead, path);
  return tree === undefined ? undefined : { path, tree };
}

function openNew(shelf: Shelf, lead: Lead, path: string): FileNode | undefined {
  const { files } = shelf.limits;
  if (shelf.sources.length >= files) return tooMuch(shelf, lead, `a schedule may be made of at most ${files} files`);
  const text = shelf.load(path);
  if (text === undefined) {
    const help = `The path is looked for in the folder of the file that names it: \`${path}\`. Names that it may declare are not looked up meanwhile.`;
    shelf.diagnostics.push(diagnostic('fileNotFound', { at: lead.at, message: `There is no file \`${lead.written}\`.`, help }));
    return undefined;
  }
  const source = sourceText(path, text);
  shelf.sources.push(source);
  return parseSource(shelf, source, shelf.sources.length - 1, true);
}

function parseSource(shelf: Shelf, source: SourceText | undefined, index: number, first: boolean): FileNode | undefined {
  if (source === undefined) return undefined;
  const { file, diagnostics } = shelf.parse(source, index);
  if (first) shelf.diagnostics.push(...diagnostics);
  for (const { text } of file?.unread ?? []) shelf.unread.add(text);
  return file ?? undefined;
}

function refuse(shelf: Shelf, lead: Lead, why: string): undefined {
  const help = 'Name a file in the same folder or below it, with `/` between folders: "common/diesel.due".';
  shelf.diagnostics.push(diagnostic('pathOutside', { at: lead.at, message: `The path \`${lead.written}\` cannot be used: ${why}.`, help }));
  return undefined;
}

function loop(shelf: Shelf, lead: Lead, path: string): undefined {
  const round = [...lead.trail.slice(lead.trail.indexOf(path)), path].map((step) => `\`${step}\``).join(' leads to ');
  shelf.diagnostics.push(
    diagnostic('fileLoop', {
      at: lead.at,
      message: `The files go round in a loop: ${round}.`,
      help: 'Take out one of the clauses that lead back.',
    }),
  );
  return undefined;
}

function tooMuch(shelf: Shelf, lead: Lead, what: string): undefined {
  const message = `\`${lead.written}\` is not opened, for ${what}.`;
  shelf.diagnostics.push(diagnostic('limitReached', { at: lead.at, message, help: 'Put what belongs together into fewer files.' }));
  return undefined;
}
