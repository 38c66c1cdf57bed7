/**
 * Conditions as nodes.
 */
import { assertNever } from '../base/assert-never.js';
import { isDefinitionOf, type Home } from '../check/model.js';
import { calendarAmountOf } from '../check/quantities/amount.js';
import { edgesOf, rangeOfFact, type Instrument } from '../check/quantities/level.js';
import { trendSize } from '../check/quantities/trend.js';
import { sound } from '../check/whole.js';
import type { CalendarAmount, Instrument as InstrumentRef, MonthDay, NodeId, RecentNode } from '../graph/rule-graph.js';
import type { ConditionNode, FactNode, MarkDayNode, NameNode } from '../syntax/tree.js';
import { delayIn, idOf, meaningOf, originOf, type Workshop } from './workshop.js';

/** Adds the nodes of a condition, and says the id of its top. */
export function compileCondition(shop: Workshop, home: Home, condition: ConditionNode): NodeId {
  switch (condition.kind) {
    case 'and':
    case 'or': {
      const parts = condition.parts.map((part) => compileCondition(shop, home, part));
      return shop.add({ kind: condition.kind, parts, origin: originOf(shop, condition.at) });
    }
    case 'not': {
      const part = compileCondition(shop, home, condition.part);
      return shop.add({ kind: 'not', part, origin: originOf(shop, condition.at) });
    }
    default:
      return compileFact(shop, home, condition);
  }
}

/** What a name that can be read stands for. */
export function instrumentOf(shop: Workshop, name: NameNode): { readonly definition: Instrument; readonly ref: InstrumentRef } {
  const definition = meaningOf(shop, name);
  if (isDefinitionOf(definition, 'gauge') || isDefinitionOf(definition, 'dipstick') || isDefinitionOf(definition, 'meter')) {
    return { definition, ref: { is: definition.kind, id: definition.id } };
  }
  throw new Error(`unchecked: ${name.text} cannot be read`);
}

function compileFact(shop: Workshop, home: Home, fact: FactNode): NodeId {
  const origin = originOf(shop, fact.at);
  switch (fact.kind) {
    case 'is':
      return compileIs(shop, fact);
    case 'compare':
    case 'between': {
      const { definition, ref } = instrumentOf(shop, fact.subject);
      return shop.add({ kind: 'compare', instrument: ref, range: sound(rangeOfFact(fact, definition)), origin });
    }
    case 'trend': {
      const { definition, ref } = instrumentOf(shop, fact.subject);
      const by = sound(trendSize(fact.by, definition));
      const withinMinutes = minutesOf(sound(calendarAmountOf(fact.within)));
      return shop.add({ kind: 'trend', instrument: ref, direction: fact.direction, by, withinMinutes, origin });
    }
    case 'recent':
      return shop.add({
        kind: 'recent',
        what: recentWhat(shop, fact),
        ...(fact.times === undefined || fact.times.value < 2 ? {} : { times: fact.times.value }),
        ...(fact.within === undefined ? {} : { within: delayIn(shop, home, fact.within) }),
        origin,
      });
    case 'worse':
      return shop.add({ kind: 'defect-is', defect: idOf(shop, fact.defect), open: true, worseThan: fact.than.text, origin });
    case 'in':
      return shop.add({ kind: 'duty-is', duty: idOf(shop, fact.duty), origin });
    case 'machine':
      return shop.add({ kind: fact.what === 'older' ? 'age' : 'idle', span: sound(calendarAmountOf(fact.span)), origin });
    case 'unworked':
      return shop.add({ kind: 'unworked', task: idOf(shop, fact.task), origin });
    case 'at-work':
      return shop.add({ kind: 'at-work', origin });
    case 'season':
      return shop.add({ kind: 'season', from: monthDay(fact.from), to: monthDay(fact.to), origin });
    default:
      return assertNever(fact);
  }
}

function compileIs(shop: Workshop, fact: Extract<FactNode, { kind: 'is' }>): NodeId {
  const subject = meaningOf(shop, fact.subject);
  const origin = originOf(shop, fact.at);
  const word = fact.word.text;
  if (isDefinitionOf(subject, 'position')) return shop.add({ kind: 'position-is', part: subject.id, position: word, origin });
  if (isDefinitionOf(subject, 'attachment')) return shop.add({ kind: 'attachment-is', attachment: subject.id, on: word === 'on', origin });
  if (isDefinitionOf(subject, 'defect')) {
    const ofClass = word === 'open' || word === 'closed' ? {} : { class: word };
    return shop.add({ kind: 'defect-is', defect: subject.id, open: word !== 'closed', ...ofClass, origin });
  }
  const { definition, ref } = instrumentOf(shop, fact.subject);
  return shop.add({ kind: 'compare', instrument: ref, range: sound(edgesOf(fact.word, definition)), origin });
}

function recentWhat(shop: Workshop, { subject, what }: Extract<FactNode, { kind: 'recent' }>): RecentNode['what'] {
  switch (what) {
    case 'read':
      return { is: 'read', instrument: instrumentOf(shop, subject).ref };
    case 'done':
      return { is: 'done', task: idOf(shop, subject) };
    case 'happened':
      return { is: 'happened', event: idOf(shop, subject) };
    default:
      return assertNever(what);
  }
}

/** Whole minutes in a calendar amount; a month counts as 30 days. */
function minutesOf({ unit, count }: CalendarAmount): number {
  if (unit === 'minutes') return count;
  return count * 1440 * (unit === 'days' ? 1 : 30);
}

function monthDay({ day, month }: MarkDayNode): MonthDay {
  return { month: month?.month ?? 1, day: day.value };
}
