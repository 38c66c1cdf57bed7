/**
 * Parsing a text again and again while it is edited: only the declarations whose words changed are read anew.
 *
 * The text is cut before each declaration. A piece that was there before keeps its tokens, and, if it was one whole declaration without
 * a mistake, its node, moved to where it now stands. All else goes through the same grammar in the same order, with its recovery.
 *
 * INVARIANT: `parse` here gives what `parse` of parse.ts gives for the same text. A declaration without a mistake depends on its own tokens
 * and on the few that follow it, which are compared; mistakes are never remembered.
 */
import { addTo } from '../base/gather.js';
import type { Token } from './token.js';
import type { Span } from '../base/span.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { chunksOf } from './chunks.js';
import { lex } from './lex.js';
import { defaultLimits, type ParseLimits } from './limits.js';
import { machinery } from './whole-machinery.js';
import { moveSpans, moveTokens, spansIn } from './moving-spans.js';
import { hiddenCharacters } from './odd-characters.js';
import { parseTokens, refusedForSize, type ParseOptions, type ParseResult } from './parse-on.js';
import type { CommentNode, DeclarationNode } from './tree.js';

/** A piece of the text with all that is known of it. */
interface Piece {
  readonly text: string;
  /** Where it stands; its tokens and places stand accordingly. */
  start: number;
  readonly tokens: readonly Token[];
  readonly comments: readonly CommentNode[];
  readonly diagnostics: readonly Diagnostic[];
  readonly hidden: readonly Diagnostic[];
  spans: readonly Span[];
  known?: { readonly node: DeclarationNode; readonly followed: string };
}

/** How far the grammar looks beyond the end of a declaration, with room to spare. */
const LOOK_AHEAD = 6;

/** The parser of one text; a class because what it remembers is its own. */
export class LiveParser {
  private pieces: Piece[] = [];
  private file = -1;
  private readonly limits: ParseLimits;

  constructor(options: ParseOptions = {}) {
    this.limits = { ...defaultLimits, ...options.limits };
  }

  /**
   * As `parse`, for the text as it now is.
   *
   * The nodes of unchanged declarations are the very objects of the last call, so that what is known of them can be kept by their identity.
   * Their places are moved in place: an earlier answer is not to be read any more.
   */
  parse(text: string, file = 0): ParseResult {
    const refused = refusedForSize(text, file, this.limits);
    if (refused !== undefined) return { file: null, diagnostics: refused.diagnostics };
    if (file !== this.file) this.pieces = [];
    this.file = file;
    const pieces = this.take(text);
    const tokens: Token[] = [];
    const starts = new Map<number, Piece>();
    for (const piece of pieces) {
      starts.set(tokens.length, piece);
      for (const token of piece.tokens) tokens.push(token);
    }
    const { altered, file: tree, diagnostics } = this.read(pieces, starts, tokens, text);
    this.pieces = pieces.filter((_, index) => !isAltered(altered, index, pieces));
    return { file: tree, diagnostics };
  }

  private read(pieces: readonly Piece[], starts: ReadonlyMap<number, Piece>, tokens: Token[], text: string) {
    const lexed = {
      tokens,
      comments: pieces.flatMap(({ comments }) => comments),
      diagnostics: pieces.flatMap(({ diagnostics }) => diagnostics),
      hidden: pieces.flatMap(({ hidden }) => hidden).slice(0, this.limits.mistakes),
    };
    const following = (end: number): string => followedBy(tokens, end);
    return parseTokens(machinery(), lexed, text, this.file, this.limits, {
      recall: (start, altered) => {
        const piece = starts.get(start);
        if (piece?.known === undefined) return undefined;
        const end = start + piece.tokens.length;
        if (anyIn(altered, start, end + LOOK_AHEAD)) return undefined;
        return piece.known.followed === following(end) ? { value: piece.known.node, end } : undefined;
      },
      keep: (start, end, node, altered) => {
        const piece = starts.get(start);
        if (piece === undefined || piece.tokens.length !== end - start || anyIn(altered, start, end + LOOK_AHEAD)) return;
        piece.known = { node, followed: following(end) };
        piece.spans = [...ownSpans(piece), ...spansIn(node)];
      },
    });
  }

  /** The pieces of a text, with what is known of those that were there before, each moved to its place. */
  private take(text: string): Piece[] {
    const before = new Map<string, Piece[]>();
    for (const piece of this.pieces) addTo(before, piece.text, piece);
    let start = 0;
    return chunksOf(text).map((chunk) => {
      const piece = before.get(chunk)?.shift() ?? newPiece(chunk, this.file, this.limits.mistakes);
      move(piece, start - piece.start);
      start += chunk.length;
      return piece;
    });
  }
}

function newPiece(text: string, file: number, most: number): Piece {
  const lexed = { ...lex(text, file, machinery()), hidden: hiddenCharacters(text, file, most) };
  return { text, start: 0, ...lexed, spans: ownSpans(lexed) };
}

function ownSpans({ comments, diagnostics, hidden }: Pick<Piece, 'comments' | 'diagnostics' | 'hidden'>): readonly Span[] {
  return spansIn({ comments, diagnostics, hidden });
}

function move(piece: Piece, by: number): void {
  if (by === 0) return;
  moveSpans(piece.spans, by);
  moveTokens(piece.tokens, by);
  piece.start += by;
}

/** Whether the grammar has put any token of a piece right: then it is not what the author wrote any more. */
function isAltered(altered: ReadonlySet<number>, index: number, pieces: readonly Piece[]): boolean {
  if (altered.size === 0) return false;
  const start = pieces.slice(0, index).reduce((sum, { tokens }) => sum + tokens.length, 0);
  const end = start + (pieces[index]?.tokens.length ?? 0);
  return anyIn(altered, start, end);
}

function anyIn(indices: ReadonlySet<number>, start: number, end: number): boolean {
  for (const index of indices) if (index >= start && index < end) return true;
  return false;
}

function followedBy(tokens: readonly Token[], end: number): string {
  let words = '';
  for (let index = end; index < Math.min(end + LOOK_AHEAD, tokens.length); index += 1) {
    const image = tokens[index]?.image ?? '';
    // What a text says decides nothing.
    words += ` ${image.startsWith('"') ? '"' : image}`;
  }
  return words;
}
