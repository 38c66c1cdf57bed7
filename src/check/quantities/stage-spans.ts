import type { SpanNode } from '../../syntax/tree.js';
import { calendarUnit, findUnit } from '../../values/units.js';

/**
 * The spans of a list of stages, each saying what it counts on: `1 h, 10 h, 50 h of engine` are all of `engine`.
 *
 * A span without `of` takes that of the nearest span after it that has one, unless it is written in calendar units.
 */
export function stageSpans(spans: readonly SpanNode[]): readonly SpanNode[] {
  let of: SpanNode['of'];
  return spans
    .toReversed()
    .map((span) => {
      of = span.of ?? of;
      return of === undefined || span.of !== undefined || isCalendar(span) ? span : { ...span, of };
    })
    .toReversed();
}

function isCalendar(span: SpanNode): boolean {
  const unit = findUnit(span.unit.text);
  return unit !== null && calendarUnit(unit) !== null;
}
