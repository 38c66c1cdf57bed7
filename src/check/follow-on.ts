/**
 * One mistake is told once: what only follows from a piece that could not be read is left out, for that piece is told already.
 */
import type { Span } from '../base/span.js';
import type { SourceText } from '../base/source-text.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { checkCodes } from '../diagnostics/codes/check.js';
import type { HeaderNode } from '../syntax/tree.js';
import type { PlacedDeclaration } from './model.js';
import type { CheckCode } from './report.js';

/** What was read of a schedule, and what was not. */
export interface Reading {
  readonly sources: readonly SourceText[];
  readonly headers: readonly HeaderNode[];
  readonly declarations: readonly PlacedDeclaration[];
  /** Names of declarations that could not be read at all. */
  readonly unread: ReadonlySet<string>;
}

/** A clause, a band or a word is missing: perhaps it stands in what could not be read. */
const ofMissingPieces = codes(
  'missingFits',
  'missingLanguage',
  'unknownWord',
  'bandGap',
  'dutyWithoutInterval',
  'countWithoutInterval',
  'marginWithoutLimit',
  'restIncomplete',
);

/** A declaration is missing: perhaps it is there and could not be read. */
const ofMissingNames = codes('unknownName', 'changeOfMissingTask');

/**
 * The findings without those that say something is missing where something was not read: in the same declaration, in the one that they point
 * to, or the declaration itself by its name.
 */
export function withoutFollowOn(found: readonly Diagnostic[], reading: Reading): readonly Diagnostic[] {
  const partial = [...reading.headers, ...reading.declarations.map(({ node }) => node)].flatMap((node) =>
    'partial' in node && node.partial === true ? [node.at] : [],
  );
  const { unread } = reading;
  if (partial.length === 0 && unread.size === 0) return found;
  const isPartial = (at: Span): boolean => partial.some((span) => span.file === at.file && span.start <= at.start && at.end <= span.end);
  return found.filter(({ code, at, labels }) => {
    if (ofMissingPieces.has(code)) return !isPartial(at) && !labels.some((label) => isPartial(label.at));
    if (ofMissingNames.has(code)) return !unread.has(reading.sources[at.file]?.text.slice(at.start, at.end) ?? '');
    return code !== checkCodes.unclearMeter.code || unread.size === 0;
  });
}

function codes(...names: readonly CheckCode[]): ReadonlySet<string> {
  return new Set(names.map((name) => checkCodes[name].code));
}
