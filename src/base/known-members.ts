import type { Shape } from './shape.js';

/** A copy of a value that fits its shape, with the members that the shape knows and no others, in the order of the shape. */
export function knownMembers(value: unknown, shape: Shape): unknown {
  if (shape.is === 'list' && Array.isArray(value)) return value.map((item: unknown) => knownMembers(item, shape.of));
  if (typeof value !== 'object' || value === null) return value;
  const source: Readonly<Record<string, unknown>> = { ...value };
  switch (shape.is) {
    case 'map':
      return source;
    case 'choice': {
      const chosen = shape.of[String(source[shape.tag])];
      return chosen === undefined ? value : knownMembers(value, chosen);
    }
    case 'object':
      return Object.fromEntries(
        Object.entries(shape.members).flatMap(([name, of]) => (source[name] === undefined ? [] : [[name, knownMembers(source[name], of)]])),
      );
    default:
      return value;
  }
}
