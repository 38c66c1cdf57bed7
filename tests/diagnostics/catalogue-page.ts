/**
 * docs/diagnostics.md, made from the catalogue.
 */
import type { CatalogueEntry } from '../../src/diagnostics/catalogue-entry.js';

/** The whole page. */
export function cataloguePage(entries: readonly CatalogueEntry[]): string {
  const sorted = [...entries].sort((a, b) => (a.code < b.code ? -1 : 1));
  return [
    '# Diagnostics by code',
    'Every problem that is told about a schedule has a code that never changes its meaning. This page is made from `src/diagnostics/catalogue/`; write there.',
    ['| code | | what |', '| --- | --- | --- |', ...sorted.map((each) => `| [${each.code}](#${each.code.toLowerCase()}) | ${each.severity} | ${each.title} |`)].join('\n'),
    ...sorted.map(section),
    '',
  ].join('\n\n').replace(/\n+$/, '\n'); // prettier-ignore
}

function section(entry: CatalogueEntry): string {
  return [
    `## ${entry.code}`,
    `**${entry.title}** (${entry.severity}).`,
    entry.explanation,
    'Wrong:',
    fence(entry.wrong),
    'Right:',
    fence(entry.right),
  ].join('\n\n');
}

function fence(text: string): string {
  return `\`\`\`\n${text.replace(/[\u202a-\u202e]/g, '\u2423')}\n\`\`\``;
}
