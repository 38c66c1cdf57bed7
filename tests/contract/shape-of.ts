/** Every path in a JSON value with the type of what stands there; the items of an array are taken together: `.tasks[].state string`. */
export function shapeOf(value: unknown): ReadonlySet<string> {
  const shape = new Set<string>();
  collect(value, '', shape);
  return shape;
}

function collect(value: unknown, path: string, shape: Set<string>): void {
  if (value === null || typeof value !== 'object') shape.add(`${path} ${value === null ? 'null' : typeof value}`);
  else if (Array.isArray(value)) for (const item of value) collect(item, `${path}[]`, shape);
  else for (const [member, each] of Object.entries(value)) collect(each, `${path}.${member}`, shape);
}
