/**
 * Trees that move with their text: when something before a piece of text grows or shrinks, all places in what was read of it move by
 * as much, and nothing else about it changes.
 */
import type { Token } from './token.js';
import type { Span } from '../base/span.js';

type MovingSpan = { -readonly [K in keyof Span]: Span[K] };

/** Every place at or below a value, each object once. A place is what stands under the key `at`. */
export function spansIn(root: object): readonly Span[] {
  const found = new Set<Span>();
  gather(root, found);
  return [...found];
}

function gather(value: object, found: Set<Span>): void {
  for (const key in value) {
    const child: unknown = value[key as keyof typeof value];
    if (typeof child !== 'object' || child === null) continue;
    if (isSpan(child)) found.add(child);
    else gather(child, found);
  }
}

function isSpan(value: object): value is Span {
  return 'start' in value && 'end' in value && 'file' in value && typeof value.start === 'number';
}

/** Moves places in their own objects: whoever holds a node of a tree that moves sees it where it now is. */
export function moveSpans(spans: readonly Span[], by: number): void {
  for (const span of spans as readonly MovingSpan[]) {
    span.start += by;
    span.end += by;
  }
}

/** Moves tokens. */
export function moveTokens(tokens: readonly Token[], by: number): void {
  for (const token of tokens) {
    token.startOffset += by;
    if (token.endOffset !== undefined) token.endOffset += by;
  }
}
