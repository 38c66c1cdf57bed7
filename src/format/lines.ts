/**
 * The author's tokens and comments, sorted into the lines that the layout gives them.
 */
import type { WrittenToken } from '../syntax/read-tokens.js';
import type { CommentNode } from '../syntax/tree.js';
import type { Break } from './breaks.js';

/** A token with what stands before it. */
export interface Piece {
  readonly text: string;
  /** Undefined: nothing but a space, and no line is broken there. */
  readonly before?: Break;
  /** Comments on lines of their own, which the piece comes after. */
  readonly above: readonly Remark[];
  /** A comment behind it on its line: the next piece begins another. */
  readonly behind?: string;
}

/** A comment on a line of its own. */
export interface Remark {
  readonly text: string;
  /** The author left a line empty above it. */
  readonly gap: boolean;
  /** Set in from the margin. */
  readonly indented: boolean;
}

/** One line as far as the layout is concerned, which may still be too long for the page. */
export interface LogicalLine {
  readonly depth: number;
  readonly opens: Extract<Break, { kind: 'line' }>['opens'];
  /** The author left a line empty above the first piece. */
  readonly gap: boolean;
  readonly pieces: readonly Piece[];
}

/** All lines of a file, and the comments that stand after its last token. */
export interface Lines {
  readonly lines: readonly LogicalLine[];
  readonly end: readonly Remark[];
}

/** Sorts tokens and comments into lines. Every token and every comment comes out once, in its order. */
export function linesOf(
  text: string,
  tokens: readonly WrittenToken[],
  comments: readonly CommentNode[],
  breaks: ReadonlyMap<number, Break>,
): Lines {
  const lines: { depth: number; opens: LogicalLine['opens']; gap: boolean; pieces: Piece[] }[] = [];
  let comment = 0;
  let from = 0;
  const remarksBefore = (place: number): readonly Remark[] => {
    const remarks: Remark[] = [];
    for (let each = comments[comment]; each !== undefined && each.at.start < place; each = comments[comment]) {
      remarks.push(remark(text, from, each));
      from = each.at.end;
      comment += 1;
    }
    return remarks;
  };
  tokens.forEach((token, index) => {
    const above = remarksBefore(token.start);
    const before = breaks.get(token.start) ?? afterComma(tokens[index - 1]);
    const gap = hasEmptyLine(text.slice(from, token.start));
    from = token.end;
    const behind = commentBehind(text, token, tokens[index + 1], comments[comment]);
    if (behind !== undefined) {
      from = behind.at.end;
      comment += 1;
    }
    const piece = {
      text: token.text,
      above,
      ...(before === undefined ? {} : { before }),
      ...(behind === undefined ? {} : { behind: behind.text.trimEnd() }),
    };
    const line = lines.at(-1);
    if (before?.kind === 'line') lines.push({ depth: before.depth, opens: before.opens, gap, pieces: [piece] });
    else if (line === undefined) throw new Error('a file begins with its header');
    else line.pieces.push(piece);
  });
  return { lines, end: remarksBefore(text.length) };
}

function afterComma(before: WrittenToken | undefined): Break | undefined {
  return before?.text === ',' ? { kind: 'soft' } : undefined;
}

function remark(text: string, from: number, { at, text: words }: CommentNode): Remark {
  const lineStart = text.lastIndexOf('\n', at.start - 1) + 1;
  return { text: words.trimEnd(), gap: hasEmptyLine(text.slice(from, at.start)), indented: at.start > lineStart };
}

/** The comment that follows a token on its own line, if that is the next thing in the file. */
function commentBehind(
  text: string,
  token: WrittenToken,
  next: WrittenToken | undefined,
  comment: CommentNode | undefined,
): CommentNode | undefined {
  if (comment === undefined || comment.at.start < token.end || (next !== undefined && comment.at.start > next.start)) return undefined;
  return /[\r\n]/.test(text.slice(token.end, comment.at.start)) ? undefined : comment;
}

function hasEmptyLine(between: string): boolean {
  return between.length > 1 && /\n[ \t]*\n/.test(between.replace(/\r\n?/g, '\n'));
}
