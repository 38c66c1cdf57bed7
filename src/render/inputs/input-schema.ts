import { entryJsonSchemas, type Json, type JsonSchema } from '../../history/entry-json-schema.js';
import { classesOf, inputDefinitions, type Inputs, refTo } from './input-definitions.js';

/** Members of entries that name what the schedule has → the definition that says what may stand there. */
const named: ReadonlyMap<string, string> = new Map([
  ['meters', 'Meters'],
  ['doneAt', 'MetersStated'],
  ['readings', 'Readings'],
  ['used', 'Supplies'],
  ['positions', 'Positions'],
  ['meter', 'Meter'],
  ['dipstick', 'Dipstick'],
  ['supply', 'Supply'],
  ['task', 'Task'],
  ['tasks', 'Task'],
  ['duty', 'Duty'],
  ['attachment', 'Attachment'],
  ['attachments', 'Attachment'],
  ['event', 'Event'],
  ['defect', 'Defect'],
]);

type Definitions = ReadonlyMap<string, JsonSchema>;

/**
 * The JSON Schema of what can be logged against one schedule: an entry as `grammar/history-entry.schema.json` has it, whose names are those
 * that the schedule has.
 *
 * An entry that it accepts leaves no stray name behind in `readTimeline`. A schema sees one entry alone: whether an outing ends
 * after it began, and whether the entry that is voided or confirmed exists, it cannot say.
 *
 * @example
 * const validate = new Ajv2020().compile(inputSchema(graph));
 * validate({ id: '7', on: '2026-05-13', kind: 'done', tasks: ['change-engine-oli'] }); // false
 */
export function inputSchema(graph: Inputs): JsonSchema {
  const definitions = inputDefinitions(graph);
  const kinds = entryJsonSchemas().flatMap((kind) => narrowKind(kind, graph, definitions));
  const entries = Object.fromEntries(kinds.map(({ name, schema }) => [name, schema]));
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: `What can be logged: ${graph.schedule.title}`,
    oneOf: kinds.map(({ name }) => refTo(name)),
    $defs: { ...Object.fromEntries(definitions), ...entries },
  };
}

interface NarrowKind {
  readonly name: string;
  readonly schema: JsonSchema;
}

/** None, where the kind is about something of which the schedule has none. */
function narrowKind(kind: JsonSchema, graph: Inputs, definitions: Definitions): readonly NarrowKind[] {
  const schema = narrowObject(kind, definitions);
  const of = constOf(membersOf(kind)['kind']);
  if (schema === null) return [];
  const name = `${of.split('-').map(capital).join('')}Entry`;
  return [{ name, schema: of === 'defect-opened' ? withClasses(schema, graph) : schema }];
}

/** Narrows what an object's members may name. `null` where a member that it cannot be without has nothing to name. */
function narrowObject(schema: JsonSchema, definitions: Definitions): JsonSchema | null {
  const required = schema['required'];
  const properties: Record<string, Json> = {};
  for (const [member, value] of Object.entries(membersOf(schema))) {
    const narrow = narrowMember(member, asSchema(value), definitions);
    if (narrow !== null) properties[member] = narrow;
    else if (Array.isArray(required) && required.includes(member)) return null;
  }
  return { ...schema, properties };
}

function narrowMember(member: string, schema: JsonSchema, definitions: Definitions): JsonSchema | null {
  if (schema['type'] === 'array') {
    const items = narrowItem(member, asSchema(schema['items']), definitions);
    return items === null ? null : { ...schema, items };
  }
  return narrowItem(member, schema, definitions);
}

function narrowItem(member: string, schema: JsonSchema, definitions: Definitions): JsonSchema | null {
  const definition = named.get(member);
  if (definition !== undefined) return definitions.has(definition) ? refTo(definition) : null;
  return schema['properties'] === undefined ? schema : narrowObject(schema, definitions);
}

/** A defect is noted with one of its own classes, or with none. */
function withClasses(schema: JsonSchema, graph: Inputs): JsonSchema {
  const { class: _class, ...members } = membersOf(schema);
  const alternatives = graph.defects.map((defect): JsonSchema => {
    const classes = classesOf(defect);
    const own = { ...members, defect: { const: defect.id, title: defect.title } };
    return { ...schema, properties: classes === null ? own : { ...own, class: classes } };
  });
  return { oneOf: alternatives };
}

function membersOf(schema: JsonSchema): JsonSchema {
  return asSchema(schema['properties']);
}

function asSchema(value: Json | undefined): JsonSchema {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new Error('a part of the schema of entries is no schema');
  return value as JsonSchema;
}

function constOf(value: Json | undefined): string {
  const found = asSchema(value)['const'];
  if (typeof found !== 'string') throw new Error('a kind of entry has no name');
  return found;
}

function capital(word: string): string {
  return word.slice(0, 1).toUpperCase() + word.slice(1);
}
