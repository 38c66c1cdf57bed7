import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** One fenced block of docs/language.md. */
export interface Block {
  /** The file that the block is; undefined for one that belongs to the schedule made of the whole page. */
  readonly file: string | undefined;
  readonly text: string;
  /** Line of the fence, from 1. */
  readonly line: number;
}

const page = fileURLToPath(new URL('../../docs/language.md', import.meta.url));
const fence = /^```duewright(?: file=(?<file>\S+))?\n(?<text>[\s\S]*?)^```$/gm;

/** The blocks of the page, in order. */
export function blocksOf(markdown: string): readonly Block[] {
  return [...markdown.matchAll(fence)].map((match) => ({
    file: match.groups?.['file'],
    text: match.groups?.['text'] ?? '',
    line: markdown.slice(0, match.index).split('\n').length,
  }));
}

/** The page as it stands. */
export function languagePage(): string {
  return readFileSync(page, 'utf8');
}

/** The examples of the page put together: one schedule, and the files beside it. */
export function pageSchedule(markdown: string): { readonly text: string; readonly files: ReadonlyMap<string, string> } {
  const blocks = blocksOf(markdown);
  const files = new Map(blocks.flatMap(({ file, text }) => (file === undefined ? [] : [[file, text] as const])));
  return { text: blocks.flatMap(({ file, text }) => (file === undefined ? [text] : [])).join(''), files };
}
