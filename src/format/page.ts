/**
 * Lines put together to a page: which of them an empty line sets apart, and where comments of their own stand.
 */
import { fillLine, tableWidths, type TableWidths } from './fill-line.js';
import type { Lines, LogicalLine, Remark } from './lines.js';

/** A declaration or the header, with the comments that lead to it and those that end it. */
interface Block {
  readonly lead: readonly Remark[];
  readonly gap: boolean;
  readonly body: readonly string[];
  readonly tail: readonly Remark[];
}

/** The whole text. */
export function pageOf({ lines, end }: Lines): string {
  const blocks = blocksOf(lines, end, tableWidths(lines));
  const printed: string[] = [];
  blocks.forEach((block, index) => {
    const last = blocks[index - 1];
    const apart = last !== undefined && (index === 1 || isLong(last) || isLong(block));
    const hasGap = block.gap || block.lead.some(({ gap }) => gap);
    block.lead.forEach(({ text, gap }, at) => printed.push(...emptyLine(gap || (at === 0 && apart && !hasGap)), text));
    printed.push(...emptyLine(block.gap || (block.lead.length === 0 && apart)), ...block.body);
    for (const { text } of block.tail) printed.push(`  ${text}`);
  });
  const after = blocks.at(-1)?.tail.length ?? 0;
  for (const { text, gap } of end.slice(after)) printed.push(...emptyLine(gap), text);
  while (printed[0] === '') printed.shift();
  return `${printed.join('\n')}\n`;
}

function emptyLine(wanted: boolean): readonly string[] {
  return wanted ? [''] : [];
}

function isLong({ body, tail }: Block): boolean {
  return body.length > 1 || tail.length > 0;
}

function blocksOf(lines: readonly LogicalLine[], end: readonly Remark[], tables: TableWidths): readonly Block[] {
  const groups: LogicalLine[][] = [];
  for (const line of lines) {
    if (line.opens === 'header' || line.opens === 'declaration') groups.push([line]);
    else groups.at(-1)?.push(line);
  }
  return groups.map((group, index) => {
    const above = group[0]?.pieces[0]?.above ?? [];
    const next = groups[index + 1]?.[0]?.pieces[0]?.above ?? end;
    return {
      lead: above.slice(index === 0 ? 0 : tailOf(above)),
      gap: group[0]?.gap === true,
      body: bodyOf(group, tables),
      tail: next.slice(0, tailOf(next)),
    };
  });
}

/** How many of the comments before a declaration still belong to the one above: those set in, right under it. */
function tailOf(above: readonly Remark[]): number {
  const first = above.findIndex(({ gap, indented }) => gap || !indented);
  return first < 0 ? above.length : first;
}

function bodyOf(group: readonly LogicalLine[], tables: TableWidths): readonly string[] {
  return group.flatMap((line, index) => {
    const margin = '  '.repeat(line.depth);
    const above = index === 0 ? [] : (line.pieces[0]?.above ?? []).flatMap(({ text, gap }) => [...emptyLine(gap), `${margin}${text}`]);
    return [...above, ...emptyLine(line.gap && index > 0), ...fillLine(line, tables)];
  });
}
