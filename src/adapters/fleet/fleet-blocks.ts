/** Whole lines of a stream, so many at a time. */
export interface LineBlock {
  readonly text: string;
  readonly lines: number;
  /** Number of its first line, counted from 1. */
  readonly first: number;
}

/** Where lines come from: a stream, or texts at hand. */
export type LineSource = AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>;

/** Longest line, in UTF-16 code units: a longer one ends the reading. */
const LONGEST_LINE = 20_000_000;

/**
 * Cuts a stream of bytes into blocks of at most `most` lines. It asks for more bytes only when a block is wanted, so a slow reader
 * holds the stream back. A line feed ends a line; a byte order mark at the beginning is dropped.
 *
 * @throws RangeError on a line beyond {@link LONGEST_LINE}.
 */
export async function* fleetBlocks(input: LineSource, most: number): AsyncGenerator<LineBlock> {
  const decoder = new TextDecoder('utf-8');
  let [rest, first] = ['', 1];
  for await (const chunk of input) {
    rest += typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true });
    for (let block = blockOf(rest, most); block !== null; block = blockOf(rest, most)) {
      yield { ...block, first };
      rest = rest.slice(block.text.length);
      first += block.lines;
    }
    if (rest.length > LONGEST_LINE && !rest.includes('\n')) throw new RangeError(`line ${first} is longer than ${LONGEST_LINE} characters`);
  }
  rest += decoder.decode();
  for (let block = blockOf(rest, most); block !== null; block = blockOf(rest, most)) {
    yield { ...block, first };
    rest = rest.slice(block.text.length);
    first += block.lines;
  }
  if (rest !== '') yield { text: rest, lines: rest.split('\n').length - (rest.endsWith('\n') ? 1 : 0), first };
}

/** The first `most` whole lines; `null` if there are not so many yet. */
function blockOf(text: string, most: number): { readonly text: string; readonly lines: number } | null {
  let end = 0;
  for (let lines = 0; lines < most; lines += 1) {
    const feed = text.indexOf('\n', end);
    if (feed < 0) return null;
    end = feed + 1;
  }
  return { text: text.slice(0, end), lines: most };
}
