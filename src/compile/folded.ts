/**
 * Words as an origin quotes them: white space becomes one space, comments go, quoted texts are kept as they are.
 */
const PIECES = /"(?:\\.|[^"\\])*"|#[^\r\n]*|\s+|[^\s"#]+|"/g;

const GAPS = /"(?:\\.|[^"\\])*"|(?:\s+|#[^\r\n]*)+/g;

/** The words of a stretch of a schedule, folded. */
export function folded(text: string): string {
  // Most are one line with single spaces.
  if (!/[^\S ]| {2}|#/.test(text)) return text.trim();
  return text.replace(GAPS, (piece) => (piece.startsWith('"') ? piece : ' ')).trim();
}

/** How far `text` has to be read for its words to come to `words`; all of it where they never do. */
export function lengthFolding(text: string, words: string): number {
  let read = '';
  for (const match of text.matchAll(PIECES)) {
    read = joined(read, match[0]);
    if (read.length >= words.length && read.trimEnd() === words) return match.index + match[0].length;
  }
  return text.length;
}

function joined(words: string, piece: string): string {
  const gap = piece.startsWith('#') || /^\s/.test(piece);
  if (!gap) return words + piece;
  return words === '' || words.endsWith(' ') ? words : `${words} `;
}
