import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { Span } from '../../base/span.js';
import type { Range } from '../../graph/rule-graph.js';
import { unitsOf } from '../../values/ticks.js';
import { numberText } from '../../values/number-text.js';
import { findUnit } from '../../values/units.js';
import type { BandNode } from '../../syntax/tree.js';
import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { tasksIn } from '../limits.js';
import { idIn, placed } from '../model.js';
import { rangeOfBand, type Instrument } from '../quantities/level.js';
import { valueOf } from '../quantities/read.js';
import { asInstrument } from '../quantities/readings.js';
import { diagnostic, rewrite } from '../report.js';
import { ticked } from '../words.js';

interface Banded {
  readonly at: Span;
  readonly node: BandNode;
  readonly range: Range;
}

/** Every possible reading of what a task sorts falls into exactly one band; named bands of a gauge do not overlap. No band runs backwards. */
export const bands: Rule = {
  codes: ['bandGap', 'bandOverlap', 'bandOutOfOrder'],
  scope: 'declaration',
  check: ({ model, table }) => [
    ...tasksIn(model).flatMap(({ node }) =>
      clausesOf(node.clauses, 'reads').flatMap((clause) => {
        const instrument = asInstrument(model.meaning.get(clause.instrument));
        if (instrument === undefined || clause.bands.length === 0) return [];
        const read = clause.bands.map(({ band }) => banded(band, instrument));
        const whole = read.flatMap((each) => each ?? []);
        return whole.length < read.length ? [] : judge(whole, instrument, clause.instrument.at, true);
      }),
    ),
    ...placed(model, 'gauge').flatMap(({ node, home }) => {
      const gauge = asInstrument(table.find('gauge', idIn(home, node.name.text)));
      // A second gauge of one name is told as such.
      if (gauge === undefined || gauge.node !== node) return [];
      const own = node.bands.flatMap(({ band }) => banded(band, gauge) ?? []);
      return judge(own, gauge, gauge.at, false);
    }),
  ],
};

function banded(node: BandNode, instrument: Instrument): Banded | undefined {
  const range = valueOf(rangeOfBand(node, instrument));
  return range === undefined ? undefined : { at: node.at, node, range };
}

function judge(all: readonly Banded[], instrument: Instrument, whole: Span, covering: boolean): readonly Diagnostic[] {
  const backwards = all.filter(({ range }) => isEmpty(range));
  if (backwards.length > 0) return backwards.map((band) => outOfOrder(band, instrument));
  const sorted = [...all].sort((a, b) => compareLower(a.range, b.range));
  const between = sorted.flatMap((band, index) => {
    const next = sorted[index + 1];
    return next === undefined ? [] : pairProblems(band, next, instrument, covering);
  });
  const [lowest, highest] = [sorted[0], sorted.at(-1)];
  if (!covering || lowest === undefined || highest === undefined) return between;
  const below = lowest.range.from === undefined ? [] : [gap(lowest.at, instrument, `below ${shown(lowest.range.from, instrument)}`, whole)];
  const above = sorted.some(({ range }) => range.to === undefined)
    ? []
    : [gap(highest.at, instrument, `above ${shown(highest.range.to ?? 0, instrument)}`, whole)];
  return [...below, ...between, ...above];
}

function pairProblems(a: Banded, b: Banded, instrument: Instrument, covering: boolean): readonly Diagnostic[] {
  const [to, from] = [a.range.to, b.range.from];
  if (to === undefined || from === undefined || to > from) return [overlap(a, b, instrument)];
  if (to < from) return covering ? [gap(b.at, instrument, `between ${shown(to, instrument)} and ${shown(from, instrument)}`, a.at)] : [];
  if (a.range.toIncluded && b.range.fromIncluded) return [overlap(a, b, instrument)];
  if (a.range.toIncluded || b.range.fromIncluded) return [];
  return covering ? [gap(b.at, instrument, `of exactly ${shown(to, instrument)}`, a.at)] : [];
}

function gap(at: Span, instrument: Instrument, which: string, other: Span): Diagnostic {
  const message = `A reading of ${ticked(instrument.name)} ${which} falls into no band.`;
  return diagnostic('bandGap', {
    at,
    message,
    labels: sameSpan(at, other) ? [] : [{ at: other, text: 'beside this' }],
    help: 'Add a band for it, or widen one.',
  });
}

function overlap(a: Banded, b: Banded, instrument: Instrument): Diagnostic {
  const edge = b.range.from;
  const touching = edge !== undefined && edge === a.range.to;
  const where = touching ? `A reading of exactly ${shown(edge, instrument)}` : 'A reading where these two meet';
  const upper = a.node.kind === 'range' ? a.node.to : undefined;
  const fixes =
    touching && upper !== undefined && a.node.kind === 'range' && a.node.from !== undefined
      ? [rewrite('likely', { ...upper.at, end: upper.at.start }, 'below ', 'Leave the edge to the higher band: write `to below`.')]
      : [];
  return diagnostic('bandOverlap', {
    at: b.at,
    message: `${where} of ${ticked(instrument.name)} falls into two bands.`,
    labels: [{ at: a.at, text: 'also in this one' }],
    help: touching
      ? 'Write `to below` for the lower band, or `above` for the higher one.'
      : 'Let each band begin where the one below it ends.',
    fixes,
  });
}

function outOfOrder({ at, node }: Banded, instrument: Instrument): Diagnostic {
  const message = `No reading of ${ticked(instrument.name)} is in this band: it ends before it begins.`;
  const levels = node.kind === 'range' && node.from !== undefined && node.to !== undefined ? { from: node.from, to: node.to } : undefined;
  const help = levels === undefined ? 'Write the lower level first.' : 'Write the lower level first, the higher one second.';
  return diagnostic('bandOutOfOrder', { at, message, help });
}

function isEmpty({ from, to, fromIncluded, toIncluded }: Range): boolean {
  return from !== undefined && to !== undefined && (from > to || (from === to && !(fromIncluded && toIncluded)));
}

function compareLower(a: Range, b: Range): number {
  const [left, right] = [a.from ?? -Infinity, b.from ?? -Infinity];
  if (left !== right) return left < right ? -1 : 1;
  return Number(b.fromIncluded) - Number(a.fromIncluded) || (a.to ?? Infinity) - (b.to ?? Infinity) || 0;
}

function shown(value: number, instrument: Instrument): string {
  if (instrument.kind === 'dipstick') return value === 0 ? 'low' : value === 1 ? 'full' : `${numberText(value * 100)} % of low to full`;
  const unit = findUnit(instrument.node.unit.text)?.symbol ?? instrument.node.unit.text;
  return `${numberText(instrument.kind === 'meter' ? unitsOf(value) : value, 3)} ${unit}`;
}

function sameSpan(a: Span, b: Span): boolean {
  return a.file === b.file && a.start === b.start && a.end === b.end;
}
