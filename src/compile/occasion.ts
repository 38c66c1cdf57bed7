/**
 * Occasions as trigger nodes.
 */
import type { Home } from '../check/model.js';
import { clockMinutesOf } from '../check/quantities/clock-minutes.js';
import { axisOf } from '../check/quantities/margin.js';
import { sound } from '../check/whole.js';
import { assertNever } from '../base/assert-never.js';
import type { NodeId } from '../graph/rule-graph.js';
import type { OccasionNode } from '../syntax/tree.js';
import { marginsOn, noMargins, type LimitTerms } from './margins.js';
import { delayIn, idOf, originOf, type Workshop } from './workshop.js';

/** Adds the node of an occasion. */
export function compileOccasion(shop: Workshop, home: Home, { what, at }: OccasionNode, terms: LimitTerms): NodeId {
  const origin = originOf(shop, at);
  switch (what.when) {
    case 'before':
    case 'after':
    case 'on':
      return shop.add({ kind: 'occasion', when: what.when, of: what.of, origin });
    case 'shortly-before':
      return shop.add({ kind: 'shortly-before', of: what.of, withinMinutes: sound(clockMinutesOf(what.within)), origin });
    case 'after-attaching':
      return shop.add({ kind: 'attaching', attachment: idOf(shop, what.attachment), origin });
    case 'refuelling':
      return shop.add({ kind: 'refuelling', origin });
    case 'event': {
      const event = idOf(shop, what.event);
      if (what.within === undefined) return shop.add({ kind: 'event', event, ...noMargins, origin });
      const within = delayIn(shop, home, what.within);
      return shop.add({ kind: 'event', event, within, ...marginsOn(shop, terms, axisOf(shop.model, within)), origin });
    }
    case 'so-often':
      return shop.add({ kind: 'event', event: idOf(shop, what.event), happenings: what.times.value, ...noMargins, origin });
    default:
      return assertNever(what);
  }
}
