/**
 * Whether something is written in a part.
 */
import type { Span } from '../base/span.js';
import type { HeaderNode } from '../syntax/tree.js';

/** Parts serve many schedules, so what one of them does not use is no mistake of the part's. */
export function isInPart(headers: readonly HeaderNode[], at: Span): boolean {
  return headers.some(({ role, at: header }) => role === 'part' && header.file === at.file);
}
