/** The JSON Schema of the rule graph as the shapes that `readRuleGraph` holds a graph to: src/base/shape.ts says what they are. */

/** The text of src/graph/graph-shape.ts. */
export function graphShapeText(schema, banner) {
  const shapes = Object.fromEntries(Object.entries(schema.definitions).map(([name, each]) => [name, shapeOf(each, schema)]));
  const { definitions: _, ...whole } = schema;
  return [
    banner,
    "import type { Shape, Shapes } from '../base/shape.js';\n",
    '/** The shapes that the parts of a rule graph have, by name. */',
    `export const graphShapes: Shapes = ${JSON.stringify(shapes)};\n`,
    '/** The shape of a rule graph. */',
    `export const graphShape: Shape = ${JSON.stringify(shapeOf(whole, schema))};\n`,
  ].join('\n');
}

function shapeOf(node, schema) {
  if (node.$ref) return { is: 'named', name: node.$ref.split('/').at(-1) };
  if (node.oneOf) return choiceOf(node.oneOf, schema);
  if (node.enum) return { is: 'one-of', values: node.enum };
  if ('const' in node) return { is: 'one-of', values: [node.const] };
  switch (node.type) {
    case 'string':
      return { is: 'text' };
    case 'boolean':
      return { is: 'flag' };
    case 'integer':
    case 'number':
      return numberOf(node);
    case 'array':
      return { is: 'list', of: shapeOf(node.items, schema) };
    case 'object':
      return node.properties ? objectOf(node, schema) : { is: 'map', of: shapeOf(node.additionalProperties, schema) };
    default:
      throw new Error(`no shape for ${JSON.stringify(node)}`);
  }
}

function numberOf({ type, minimum, exclusiveMinimum, maximum }) {
  const least = minimum ?? exclusiveMinimum;
  return {
    is: 'number',
    whole: type === 'integer',
    ...(least === undefined ? {} : { least }),
    ...(exclusiveMinimum === undefined ? {} : { over: true }),
    ...(maximum === undefined ? {} : { most: maximum }),
  };
}

function objectOf({ properties, required = [], additionalProperties }, schema) {
  if (additionalProperties !== false) throw new Error('an object of the schema is open');
  const names = Object.keys(properties);
  const members = Object.fromEntries(names.map((name) => [name, shapeOf(properties[name], schema)]));
  return { is: 'object', members, optional: names.filter((name) => !required.includes(name)) };
}

/** Alternatives told apart by the one member that is a constant in all of them. */
function choiceOf(alternatives, schema) {
  const flat = alternatives.flatMap((each) => unfolded(each, schema));
  const tag = Object.keys(flat[0].resolved.properties).find((name) =>
    flat.every(({ resolved }) => 'const' in (resolved.properties[name] ?? {})),
  );
  if (tag === undefined) throw new Error('alternatives without a tag');
  return {
    is: 'choice',
    tag,
    of: Object.fromEntries(flat.map(({ node, resolved }) => [resolved.properties[tag].const, shapeOf(node, schema)])),
  };
}

function unfolded(node, schema) {
  const resolved = node.$ref ? schema.definitions[node.$ref.split('/').at(-1)] : node;
  return resolved.oneOf ? resolved.oneOf.flatMap((each) => unfolded(each, schema)) : [{ node, resolved }];
}
