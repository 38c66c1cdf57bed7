/**
 * What compiling a part of the schedule needs: the model, the nodes made so far, and where things were written.
 */
import { positionOf, type SourceText } from '../base/source-text.js';
import type { Span } from '../base/span.js';
import type { Definition, Home, Model } from '../check/model.js';
import type { DateNode, NameNode, SpanNode } from '../syntax/tree.js';
import { dayOf } from '../values/civil.js';
import type { Day } from '../values/moment.js';
import type { Amount, Origin } from '../graph/rule-graph.js';
import { amountOf, delayOf } from '../check/quantities/amount.js';
import { sound } from '../check/whole.js';
import type { CompileByWeek } from './by-week.js';
import { folded } from './folded.js';
import { nodeList, type NodeList } from './node-list.js';

export interface Workshop extends NodeList {
  readonly model: Model;
  readonly sources: readonly SourceText[];
  /** What makes marks by the week; left out where the parser reads none. */
  readonly byWeek?: CompileByWeek | undefined;
}

export function workshop(model: Model, sources: readonly SourceText[], byWeek?: CompileByWeek): Workshop {
  return { model, sources, byWeek, ...nodeList() };
}

/** The day of a date. @throws Error where there is no such day: a bug of ours, for a rule should have said so. */
export function dayIn({ text }: DateNode): Day {
  const day = dayOf(text);
  if (day === null) throw new Error(`unchecked date: ${text}`);
  return day;
}

/** Where something was written: its place, and its words with white space folded and comments left out. */
export function originOf(shop: Workshop, at: Span): Origin {
  const source = shop.sources[at.file];
  if (source === undefined) throw new Error(`no source ${at.file}`);
  const { line, column } = positionOf(source, at.start);
  return { source: at.file, line, column, text: folded(source.text.slice(at.start, at.end)) };
}

/** The id of what a name stands for. */
export function idOf(shop: Workshop, name: NameNode): string {
  return meaningOf(shop, name).id;
}

/** What a name stands for. */
export function meaningOf(shop: Workshop, name: NameNode): Definition {
  const definition = shop.model.meaning.get(name);
  if (definition === undefined) throw new Error(`unchecked name: ${name.text}`);
  return definition;
}

/** What a span amounts to. */
export function amountIn(shop: Workshop, home: Home, span: SpanNode): Amount {
  return sound(amountOf(shop.model, home, span));
}

/** What a delay after something amounts to. */
export function delayIn(shop: Workshop, home: Home, span: SpanNode): Amount {
  return sound(delayOf(shop.model, home, span));
}
