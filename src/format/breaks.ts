/**
 * Where a line begins and where one may be broken, read off the tree.
 */
import type { Span } from '../base/span.js';
import type { WrittenToken } from '../syntax/read-tokens.js';
import type {
  ConditionNode,
  DeclarationNode,
  DefectNode,
  ExampleNode,
  FileNode,
  OutcomeNode,
  PlanNode,
  ReadsNode,
  StepClauseNode,
  TaskClauseNode,
} from '../syntax/tree.js';

/**
 * What stands before a token.
 *
 * `line`: it begins a line, so deep. `part`: it begins a part of a line that hangs together: set off by two spaces, and broken before
 * when the whole part does not fit. `cell`: likewise, and the cells of one table stand below each other. `soft`: the line may be broken
 * here when it must be.
 */
export type Break =
  | { readonly kind: 'line'; readonly depth: number; readonly opens: 'header' | 'declaration' | 'clause' | 'moment' }
  | { readonly kind: 'part' | 'soft' }
  | { readonly kind: 'cell'; readonly table: number };

/** The breaks of a file, by the offset of the token that they stand before. */
export function breaksOf(file: FileNode, tokens: readonly WrittenToken[]): ReadonlyMap<number, Break> {
  const draft: Draft = { breaks: new Map(), tokens, indices: new Map(tokens.map(({ start }, index) => [start, index])) };
  draft.breaks.set(file.header.at.start, { kind: 'line', depth: 0, opens: 'header' });
  for (const each of file.header.clauses) clause(draft, each.at);
  for (const declaration of file.declarations) {
    draft.breaks.set(declaration.at.start, { kind: 'line', depth: 0, opens: 'declaration' });
    inDeclaration(draft, declaration);
  }
  return draft.breaks;
}

interface Draft {
  readonly breaks: Map<number, Break>;
  readonly tokens: readonly WrittenToken[];
  /** Offset of a token → its index. */
  readonly indices: ReadonlyMap<number, number>;
}

function clause({ breaks }: Draft, { start }: Span, depth = 1): void {
  breaks.set(start, { kind: 'line', depth, opens: 'clause' });
}

function inDeclaration(draft: Draft, declaration: DeclarationNode): void {
  switch (declaration.kind) {
    case 'gauge':
      for (const band of declaration.bands) clause(draft, band.at);
      return;
    case 'defect':
      inDefect(draft, declaration);
      return;
    case 'task':
    case 'change':
    case 'step':
      inClauses(draft, declaration.clauses);
      return;
    case 'example':
      inExample(draft, declaration);
      return;
    case 'never':
    case 'stop':
      inJoined(draft, declaration.condition);
      return;
    default:
      return;
  }
}

function inDefect(draft: Draft, { classes: [first], rules, at }: DefectNode): void {
  // The word `classes` has no node of its own: it is the token before the first of them.
  const word = first === undefined ? undefined : draft.tokens[(draft.indices.get(first.name.at.start) ?? 0) - 1];
  if (word !== undefined) clause(draft, { ...at, start: word.start });
  for (const rule of rules) {
    clause(draft, rule.at);
    inOutcome(draft, rule.outcome, at.start);
  }
}

function inClauses(draft: Draft, clauses: readonly (TaskClauseNode | StepClauseNode)[]): void {
  clauses.forEach((each, index) => {
    // How long and where are said in one breath.
    const shared = each.kind === 'place-at' && clauses[index - 1]?.kind === 'takes';
    if (shared) draft.breaks.set(each.at.start, { kind: 'part' });
    else clause(draft, each.at);
    if (each.kind === 'reads') inReads(draft, each);
    if ('condition' in each) inJoined(draft, each.condition);
    if ('plan' in each) inJoined(draft, each.plan);
    if (each.kind === 'first' && each.what.kind === 'plan') inJoined(draft, each.what.plan);
  });
}

function inReads(draft: Draft, { bands, at }: ReadsNode): void {
  for (const band of bands) {
    clause(draft, band.at, 2);
    inOutcome(draft, band.outcome, at.start);
  }
}

function inOutcome({ breaks }: Draft, { at, then }: OutcomeNode, table: number): void {
  breaks.set(at.start, { kind: 'cell', table });
  for (const consequence of then) breaks.set(consequence.at.start, { kind: 'part' });
}

function inExample(draft: Draft, { lines }: ExampleNode): void {
  for (const line of lines) {
    draft.breaks.set(line.at.start, { kind: 'line', depth: 1, opens: 'moment' });
    line.items.forEach((item, index) => {
      draft.breaks.set(item.at.start, { kind: index === 0 ? 'soft' : 'part' });
      if (item.kind !== 'expect-task') return;
      if (item.because?.kind === 'because-when') inJoined(draft, item.because.condition);
      for (const point of item.until) soften(draft, point.at);
    });
  }
}

/** A long condition or plan is broken before the parts that it joins, outside their parentheses; the word that joins them ends the line. */
function inJoined(draft: Draft, joined: ConditionNode | PlanNode): void {
  if (joined.kind === 'not') inJoined(draft, joined.part);
  if (joined.kind !== 'and' && joined.kind !== 'or' && joined.kind !== 'whichever') return;
  joined.parts.forEach((part, index) => {
    if (index > 0) soften(draft, part.at);
    inJoined(draft, part);
  });
}

function soften({ breaks, tokens, indices }: Draft, { start }: Span): void {
  let index = indices.get(start) ?? 0;
  while (tokens[index - 1]?.text === '(') index -= 1;
  const place = tokens[index]?.start ?? start;
  if (!breaks.has(place)) breaks.set(place, { kind: 'soft' });
}
