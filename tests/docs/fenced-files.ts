import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const fence = /^```\S+ file=(?<name>\S+)\n(?<text>[\s\S]*?)^```$/gm;

/** The files that a page of docs/ shows whole (a fence that says `file=…`), by name. */
export function fencedFiles(page: string): ReadonlyMap<string, string> {
  const markdown = readFileSync(fileURLToPath(new URL(`../../docs/${page}`, import.meta.url)), 'utf8');
  return new Map([...markdown.matchAll(fence)].map(({ groups }) => [groups?.['name'] ?? '', groups?.['text'] ?? '']));
}
