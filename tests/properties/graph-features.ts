/**
 * What a rule graph can hold, read from its published schema, and what one graph does hold: each kind of node, each optional property
 * present, each value of an enumeration. With it a test can tell whether random schedules use every construct of the language.
 */

/** The part of JSON Schema that the rule graph's is written in. */
export interface Schema {
  readonly $ref?: string;
  readonly oneOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly type?: string;
  readonly definitions?: Readonly<Record<string, Schema>>;
}

interface Place {
  readonly at: string;
  readonly schema: Schema;
}

/** The schema behind a reference, and the name under which it is told. */
function resolved(root: Schema, { at, schema }: Place): Place {
  const name = schema.$ref?.split('/').at(-1);
  const found = name === undefined ? undefined : root.definitions?.[name];
  return name === undefined || found === undefined ? { at, schema } : resolved(root, { at: name, schema: found });
}

/** Which of several shapes: each of ours has a property with one constant value. */
function label(root: Schema, schema: Schema, at: string): Place {
  const place = resolved(root, { at, schema });
  const [kind] = constants(place.schema);
  return schema.$ref === undefined && kind !== undefined ? { ...place, at: `${at}(${String(kind[1])})` } : place;
}

function constants(schema: Schema): readonly (readonly [string, unknown])[] {
  return Object.entries(schema.properties ?? {}).flatMap(([name, each]) => (each.const === undefined ? [] : [[name, each.const] as const]));
}

/** Every feature that graphs may have from a definition on. */
export function possibleFeatures(root: Schema, from: Schema, at: string, seen = new Set<string>()): ReadonlySet<string> {
  const place = resolved(root, { at, schema: from });
  if (from.$ref !== undefined && seen.has(place.at)) return new Set();
  const within = from.$ref === undefined ? seen : seen.add(place.at);
  const { schema } = place;
  const inner = (each: Schema, name: string): readonly string[] => [...possibleFeatures(root, each, name, within)];
  if (schema.oneOf !== undefined) {
    const shapes = schema.oneOf.map((each) => label(root, each, place.at));
    return new Set(shapes.flatMap((shape) => [shape.at, ...inner(shape.schema, shape.at)]));
  }
  return new Set([
    ...Object.entries(schema.properties ?? {}).flatMap(([name, each]) => {
      const path = `${place.at}.${name}`;
      const optional = schema.required?.includes(name) === true ? [] : [path, `${path} left out`];
      return [...optional, ...inner(each, path)];
    }),
    ...(schema.items === undefined ? [] : [`${place.at}[]`, ...inner(schema.items, `${place.at}[]`)]),
    ...(schema.enum ?? (schema.type === 'boolean' ? [true, false] : [])).map((value) => `${place.at} = ${String(value)}`),
  ]);
}

/** The features that a value has. */
export function featuresIn(root: Schema, from: Schema, at: string, value: unknown): readonly string[] {
  const { at: path, schema } = resolved(root, { at, schema: from });
  if (schema.oneOf !== undefined) {
    const shape = schema.oneOf.map((each) => label(root, each, path)).find((each) => fits(root, each.schema, value));
    if (shape === undefined) throw new Error(`${path} has none of its shapes: ${JSON.stringify(value)}`);
    return [shape.at, ...featuresIn(root, shape.schema, shape.at, value)];
  }
  if (Array.isArray(value)) {
    const { items } = schema;
    return items === undefined ? [] : value.flatMap((each) => [`${path}[]`, ...featuresIn(root, items, `${path}[]`, each)]);
  }
  if (schema.properties !== undefined)
    return Object.entries(schema.properties).flatMap(([name, each]) => inProperty(root, schema, each, path, name, value));
  return schema.enum !== undefined || schema.type === 'boolean' ? [`${path} = ${String(value)}`] : [];
}

function inProperty(root: Schema, owner: Schema, schema: Schema, path: string, name: string, value: unknown): readonly string[] {
  const own = Object.entries(value ?? {}).find(([key]) => key === name);
  const optional = owner.required?.includes(name) !== true;
  if (own === undefined || own[1] === undefined) return optional ? [`${path}.${name} left out`] : [];
  return [...(optional ? [`${path}.${name}`] : []), ...featuresIn(root, schema, `${path}.${name}`, own[1])];
}

/** Whether a value has the constants of a shape, or of one of its own shapes. */
function fits(root: Schema, schema: Schema, value: unknown): boolean {
  if (schema.oneOf !== undefined) return schema.oneOf.some((each) => fits(root, label(root, each, '').schema, value));
  return constants(schema).every(([name, constant]) =>
    Object.entries(value ?? {}).some(([key, each]) => key === name && each === constant),
  );
}
