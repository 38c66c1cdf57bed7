import type { ObjectShape, Shape } from './shape.js';

/** A copy of a value that fits its shape, with the members that the shape knows and no others, in the order of the shape. */
export function knownMembers(value: unknown, shape: Shape): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return shape.is === 'list' ? value.map((item: unknown) => knownMembers(item, shape.of)) : value;
  switch (shape.is) {
    case 'map':
      return { ...value };
    case 'choice': {
      const chosen = shape.of[String(Reflect.get(value, shape.tag))];
      return chosen === undefined ? value : knownMembers(value, chosen);
    }
    case 'object':
      return copied(value as Readonly<Record<string, unknown>>, shape);
    default:
      return value;
  }
}

function copied(value: Readonly<Record<string, unknown>>, { members }: ObjectShape): unknown {
  const copy: Record<string, unknown> = {};
  for (const name in members) {
    const member = value[name];
    const of = members[name];
    if (member !== undefined && of !== undefined) copy[name] = knownMembers(member, of);
  }
  return copy;
}
