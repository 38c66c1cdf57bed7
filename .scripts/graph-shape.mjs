/** The JSON Schema of the rule graph as the shapes that `readRuleGraph` holds a graph to: src/base/shape.ts says what they are. */

/** Shapes that a reader may be made without, by the part that has them; all others every reader has. */
const parts = {
  timingShapes:
    'DutyMixNode StagesNode FirstNode MarksNode CalendarMarksNode CalendarWindowNode OccasionNode ShortlyBeforeNode AttachingNode RefuellingNode EventNode',
  conditionShapes:
    'WhenNode WhileNode AndNode OrNode NotNode AttachmentIsNode DutyIsNode RecentNode AgeNode IdleNode UnworkedNode AtWorkNode SeasonNode MonthDay Stop',
  findingShapes: 'Range Outcome AskedNode SoonerNode DefectIsNode CompareNode TrendNode Gauge Dipstick Defect Task.reads',
  accessShapes: 'PositionIsNode Step Never Access.parts Access.places Access.walks Stance.of',
};

/** The text of src/graph/graph-shape.ts. */
export function graphShapeText(schema, banner) {
  const { definitions, ...whole } = schema;
  const shapes = Object.fromEntries(Object.entries(definitions).map(([name, each]) => [name, shapeOf(each, schema)]));
  apart(shapes, shapes.Task.members.reads, 'Task.reads');
  for (const list of ['parts', 'places', 'walks']) apart(shapes, shapes.Access.members[list], `Access.${list}`);
  apart(shapes, shapes.Stance, 'Stance.of');
  const root = shapeOf(whole, schema);
  const reached = new Set();
  reach(root, shapes, reached);
  const optional = new Set(Object.values(parts).flatMap((names) => names.split(' ')));
  const tableOf = (names) => JSON.stringify(Object.fromEntries(names.map((name) => [name, shapes[name]])));
  return [
    banner,
    "import type { Shape, Shapes } from '../base/shape.js';\n",
    '/** The shapes that the parts of any rule graph have, by name. */',
    `export const commonShapes: Shapes = ${tableOf([...reached].filter((name) => !optional.has(name)))};\n`,
    ...Object.entries(parts).flatMap(([table, names]) => [
      `/** Those of ${table.replace('Shapes', '')}, which a reader may be made without. */`,
      `export const ${table}: Shapes = ${tableOf(names.split(' '))};\n`,
    ]),
    '/** The shape of a rule graph. */',
    `export const graphShape: Shape = ${JSON.stringify(root)};\n`,
  ].join('\n');
}

/** Gives what a list or a map is of a name of its own. */
function apart(shapes, each, name) {
  shapes[name] = each.of;
  each.of = { is: 'named', name };
}

/** Notes the names that a shape leads to: what only the types are made of is of no use here. */
function reach(node, shapes, reached) {
  if (typeof node !== 'object' || node === null) return;
  if (node.is === 'named' && !reached.has(node.name)) {
    reached.add(node.name);
    reach(shapes[node.name], shapes, reached);
  }
  Object.values(node).forEach((each) => reach(each, shapes, reached));
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
