import { notedEvents } from '../../graph/noted-events.js';
import type { Defect, RuleGraph } from '../../graph/rule-graph.js';
import type { Json, JsonSchema } from '../../history/entry-json-schema.js';

/** The part of a rule graph that says what can be logged against it. */
export type Inputs = Pick<
  RuleGraph,
  'schedule' | 'meters' | 'gauges' | 'dipsticks' | 'duties' | 'attachments' | 'events' | 'supplies' | 'defects' | 'tasks' | 'access'
>;

interface Named {
  readonly id: string;
  readonly title: string;
}

/** Where a definition of the schema is. */
export function refTo(definition: string): JsonSchema {
  return { $ref: `#/$defs/${definition}` };
}

/** What an instrument that is no number may read: where the fluid stood at the dipstick. */
const MARKS: readonly string[] = ['below-low', 'low', 'full', 'above-full'];

/**
 * What the machine has, as definitions of a JSON Schema: the names by kind, and the objects that are keyed by names.
 *
 * A meter that counts from outings is read by nobody, so it can be stated (`MetersStated`) and not read (`Meters`). A kind of thing
 * of which the schedule has none gets no definition of its names.
 */
export function inputDefinitions(graph: Inputs): ReadonlyMap<string, JsonSchema> {
  const read = graph.meters.filter(({ fromOutings }) => !fromOutings);
  const definitions: readonly (readonly [string, JsonSchema | null])[] = [
    ['Meters', keyed('What meters showed.', Object.fromEntries(read.map((meter) => [meter.id, quantity(meter)])))],
    ['MetersStated', keyed('About what meters showed.', Object.fromEntries(graph.meters.map((meter) => [meter.id, quantity(meter)])))],
    ['Readings', keyed('What gauges and dipsticks read.', readingsOf(graph))],
    ['Supplies', keyed('What was used up.', Object.fromEntries(graph.supplies.map((supply) => [supply.id, quantity(supply)])))],
    ['Positions', keyed('Where moving parts stand.', positionsOf(graph))],
    ['Meter', names(read)],
    ['Dipstick', names(graph.dipsticks)],
    ['Supply', names(graph.supplies)],
    ['Task', names(graph.tasks)],
    ['Duty', names(graph.duties)],
    ['Attachment', names(graph.attachments)],
    ['Event', names(notedEvents(graph))],
    ['Defect', names(graph.defects)],
  ];
  return new Map(definitions.flatMap(([name, schema]) => (schema === null ? [] : [[name, schema] as const])));
}

/** The classes that a defect may be noted with; `null` where it has none. */
export function classesOf({ classes }: Defect): JsonSchema | null {
  return names(classes.map(({ name, title }) => ({ id: name, title: title ?? name })));
}

function names(items: readonly Named[]): JsonSchema | null {
  return items.length === 0 ? null : { oneOf: items.map(({ id, title }) => ({ const: id, title })) };
}

/** An object with some of these members and no others. */
function keyed(description: string, properties: { readonly [member: string]: Json }): JsonSchema {
  return { description, type: 'object', properties, additionalProperties: false };
}

/** At most 1e10, as everywhere in an entry, so that sums stay exact. */
function quantity({ title, unit }: { readonly title: string; readonly unit?: string }): JsonSchema {
  return { title: unit === undefined ? title : `${title}, ${unit}`, type: 'number', minimum: 0, maximum: 1e10 };
}

function readingsOf({ gauges, dipsticks }: Inputs): { readonly [member: string]: Json } {
  const number = { type: 'number', minimum: -1e9, maximum: 1e9 };
  return Object.fromEntries<Json>([
    ...gauges.map(({ id, title, unit }) => [id, { title: `${title}, ${unit}`, ...number }] as const),
    ...dipsticks.map(({ id, title }) => {
      const described = `${title}: 0 is the low mark, 1 the full mark`;
      return [id, { title: described, anyOf: [number, { enum: MARKS }] }] as const;
    }),
  ]);
}

function positionsOf({ access }: Inputs): { readonly [member: string]: Json } {
  return Object.fromEntries(
    access.parts.map(({ id, title, positions }) => [id, { title: title ?? id, enum: positions.map(({ name }) => name) }]),
  );
}
