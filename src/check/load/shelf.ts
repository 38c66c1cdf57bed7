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

/** Parses a text that was opened; `first` where it is for the first time, for then what is wrong with it is told. */
export function parseSource(shelf: Shelf, source: SourceText | undefined, index: number, first: boolean): FileNode | undefined {
  if (source === undefined) return undefined;
  const { file, diagnostics } = shelf.parse(source, index);
  if (first) shelf.diagnostics.push(...diagnostics);
  for (const { text } of file?.unread ?? []) shelf.unread.add(text);
  return file ?? undefined;
}
