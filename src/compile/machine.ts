/**
 * What the machine has, as the graph keeps it: meters, gauges, dipsticks, duties, attachments, events, supplies, defects, stops.
 */
import { definitionsOf, type Definition } from '../check/model.js';
import { calendarAmountOf } from '../check/quantities/amount.js';
import { rangeOfBand } from '../check/quantities/level.js';
import { litresOf } from '../check/quantities/work.js';
import { sound } from '../check/whole.js';
import type { CalendarAmount, Defect, Dipstick, Event, Gauge, Meter, Origin, Stop, Supply } from '../graph/rule-graph.js';
import type { SpanNode, UnitNode } from '../syntax/tree.js';
import { findUnit } from '../values/units.js';
import { compileCondition } from './condition.js';
import { compileOutcome } from './task.js';
import { dayIn, originOf, type Workshop } from './workshop.js';

interface Entry {
  id: string;
  title: string;
  origin: Origin;
}

export function compileMeters(shop: Workshop): Meter[] {
  return definitionsOf(shop.model, 'meter').map((meter) => {
    const { id, title, origin } = entry(shop, meter);
    const { fromOutings, unit } = meter.node;
    return { id, title, unit: symbol(unit), fromOutings, ...(meter.home.prefix === '' ? {} : { attachment: meter.home.prefix }), origin };
  });
}

export function compileGauges(shop: Workshop): Gauge[] {
  return definitionsOf(shop.model, 'gauge').map((gauge) => {
    const { id, title, origin } = entry(shop, gauge);
    const bands = gauge.node.bands.map(({ name, band }) => ({ name: name.text, range: sound(rangeOfBand(band, gauge)) }));
    return { id, title, unit: symbol(gauge.node.unit), ...fresh(gauge.node.fresh), bands, origin };
  });
}

export function compileDipsticks(shop: Workshop): Dipstick[] {
  return definitionsOf(shop.model, 'dipstick').map((dipstick) => {
    const { id, title, origin } = entry(shop, dipstick);
    return { id, title, litres: sound(litresOf(dipstick.node.range)), ...fresh(dipstick.node.fresh), origin };
  });
}

export function compileSupplies(shop: Workshop): Supply[] {
  return definitionsOf(shop.model, 'supply').map((supply) => {
    const { id, title, origin } = entry(shop, supply);
    const { unit, knownAs } = supply.node;
    return {
      id,
      title,
      ...(unit === undefined ? {} : { unit: symbol(unit) }),
      ...(knownAs === undefined ? {} : { knownAs: knownAs.text }),
      origin,
    };
  });
}

export function compileDefects(shop: Workshop): Defect[] {
  return definitionsOf(shop.model, 'defect').map((defect) => {
    const { id, title, origin } = entry(shop, defect);
    const classes = defect.node.classes.map((each) => ({
      name: each.name.text,
      ...(each.title === undefined ? {} : { title: each.title.text }),
    }));
    const rules = defect.node.rules.map(({ name, outcome, at }) => ({
      class: name.text,
      outcome: compileOutcome(shop, defect.home, outcome),
      origin: originOf(shop, at),
    }));
    return { id, title, classes, rules, origin };
  });
}

export function compileStops(shop: Workshop): Stop[] {
  return definitionsOf(shop.model, 'stop').map((stop) => {
    const { id, title, origin } = entry(shop, stop);
    return { id, title, condition: compileCondition(shop, stop.home, stop.node.condition), origin };
  });
}

/** What happens and is noted as such; and the tasks that something comes after, each as what happens when it is done. */
export function compileEvents(shop: Workshop): Event[] {
  const tasks = shop.model.references.flatMap(({ kinds, definition }) =>
    kinds.includes('event') && definition?.kind === 'task' ? [definition] : [],
  );
  return [
    ...definitionsOf(shop.model, 'event').map((definition) => {
      const { on } = definition.node;
      return { ...entry(shop, definition), ...(on === undefined ? {} : { on: dayIn(on) }) };
    }),
    ...[...new Set(tasks)].map((task) => ({ ...entry(shop, task), task: task.id })),
  ];
}

/** Duties and attachments: a name and a title. */
export function compileNamed(shop: Workshop, kind: 'duty' | 'attachment'): Entry[] {
  return definitionsOf(shop.model, kind).map((definition) => entry(shop, definition));
}

function entry(shop: Workshop, { id, title, node }: Definition): Entry {
  return { id, title, origin: originOf(shop, node.at) };
}

function symbol(unit: UnitNode): string {
  return findUnit(unit.text)?.symbol ?? unit.text;
}

function fresh(span: SpanNode | undefined): { freshFor?: CalendarAmount } {
  return span === undefined ? {} : { freshFor: sound(calendarAmountOf(span)) };
}
