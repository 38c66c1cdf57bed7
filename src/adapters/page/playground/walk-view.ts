/**
 * A walk-round in words, for showing on a page.
 */
import type { Caution, RuleGraph, WalkRound } from '../../../engine.js';
import { safeText } from '../../../render/safe-text.js';
import { secondsInWords } from '../../../render/walk-round/seconds-in-words.js';
import { details } from '../../../render/walk-round/sheet-text.js';
import { type BesideWalk, sheetWords } from '../../../render/walk-round/sheet-words.js';

export interface WalkView {
  readonly head: readonly string[];
  readonly warnings: readonly string[];
  readonly lines: readonly WalkLineView[];
}

export interface WalkLineView {
  readonly number: number;
  readonly kind: 'walk' | 'step' | 'task';
  readonly title: string;
  readonly time: string;
  readonly cautions: readonly Caution[];
  readonly qualified: boolean;
  readonly notes: readonly string[];
  /** From here on the machine is put back. */
  readonly beginsBack: boolean;
}

/** Puts a walk-round into words, with what stands beside it. */
export function walkView(walk: WalkRound, graph: RuleGraph, { held = [], apart = [] }: BesideWalk): WalkView {
  const words = sheetWords(walk, graph);
  const nothing = walk.lines.length === 0 && walk.outcome === 'found';
  return {
    head: (nothing
      ? ['Nothing is due that has to be gone round for.', ...apart]
      : [`${words.summary} ${words.proof} ${words.starts} ${words.ends}`, words.tools, words.supplies, ...apart]
    ).flatMap((text) => (text === null ? [] : [safeText(text)])),
    warnings: [...held, ...words.warnings, ...words.leftOut].map(safeText),
    lines: walk.lines.map((line) => ({
      number: line.number,
      kind: line.kind,
      title: safeText(line.title),
      time: line.seconds === 0 ? '' : secondsInWords(line.seconds),
      cautions: line.cautions,
      qualified: line.qualified,
      notes: details(line, walk, graph).flatMap((text) => (text === '' ? [] : [safeText(text)])),
      beginsBack: line.number === walk.backFrom,
    })),
  };
}
