/**
 * Holds a value to a shape: where the first thing stands that does not fit, and what should stand there.
 */
import { assertNever } from '../base/assert-never.js';
import type { Shape, Shapes } from './shape.js';

type Numbered = Extract<Shape, { readonly is: 'number' }>;
type Membered = Extract<Shape, { readonly is: 'object' }>;

/**
 * One sentence without its full stop about the first misfit; undefined where the value fits.
 *
 * Law: no deeper than the shapes themselves go, and nothing of the value is repeated but the names of members that the shapes know, so
 * the sentence is safe to print.
 *
 * @example misfit({ days: -1 }, { is: 'object', members: { days: { is: 'number', whole: true, least: 0 } }, optional: [] }, {})
 *   // '`days` should be a whole number of at least 0'
 */
export function misfit(value: unknown, shape: Shape, shapes: Shapes, path = ''): string | undefined {
  switch (shape.is) {
    case 'text':
      return typeof value === 'string' ? undefined : should(path, 'be text');
    case 'flag':
      return typeof value === 'boolean' ? undefined : should(path, 'be true or false');
    case 'number':
      return fitsNumber(value, shape) ? undefined : should(path, `be ${numberInWords(shape)}`);
    case 'one-of':
      return shape.values.some((each) => each === value) ? undefined : should(path, `be ${shape.values.map(String).join(' or ')}`);
    case 'list':
      return Array.isArray(value) ? firstMisfit(value, shape.of, shapes, path) : should(path, 'be a list');
    case 'map':
      return isRecord(value) ? mapMisfit(value, shape.of, shapes, path) : should(path, 'be an object');
    case 'object':
      return isRecord(value) ? memberMisfit(value, shape, shapes, path) : should(path, 'be an object');
    case 'choice': {
      const tag = isRecord(value) ? own(value, shape.tag) : undefined;
      const chosen = typeof tag === 'string' && Object.hasOwn(shape.of, tag) ? shape.of[tag] : undefined;
      return chosen === undefined ? should(join(path, shape.tag), 'be a kind that is known here') : misfit(value, chosen, shapes, path);
    }
    case 'named': {
      const named = shapes[shape.name];
      if (named === undefined) throw new Error(`no shape ${shape.name}`);
      return misfit(value, named, shapes, path);
    }
    default:
      return assertNever(shape);
  }
}

function firstMisfit(items: readonly unknown[], shape: Shape, shapes: Shapes, path: string): string | undefined {
  for (let index = 0; index < items.length; index += 1) {
    const found = misfit(items[index], shape, shapes, join(path, String(index)));
    if (found !== undefined) return found;
  }
  return undefined;
}

function mapMisfit(value: Readonly<Record<string, unknown>>, shape: Shape, shapes: Shapes, path: string): string | undefined {
  // A member of that name is lost whenever an object is built anew, so none may have it.
  if (Object.hasOwn(value, '__proto__')) return should(path, 'name no member `__proto__`');
  return Object.values(value).some((member) => misfit(member, shape, shapes) !== undefined)
    ? should(path, 'hold nothing but what belongs there')
    : undefined;
}

function memberMisfit(value: Readonly<Record<string, unknown>>, shape: Membered, shapes: Shapes, path: string): string | undefined {
  for (const [name, inner] of Object.entries(shape.members)) {
    const member = own(value, name);
    if (member === undefined && shape.optional.includes(name)) continue;
    const found = misfit(member, inner, shapes, join(path, name));
    if (found !== undefined) return found;
  }
  return Object.keys(value).every((name) => Object.hasOwn(shape.members, name)) ? undefined : should(path, 'have no other members');
}

function fitsNumber(value: unknown, { whole, least, over, most }: Numbered): boolean {
  if (typeof value !== 'number' || !Number.isFinite(value) || (whole && !Number.isSafeInteger(value))) return false;
  if (least !== undefined && (value < least || (over === true && value === least))) return false;
  return most === undefined || value <= most;
}

function numberInWords({ whole, least, over, most }: Numbered): string {
  const from = least === undefined ? '' : ` ${over === true ? 'above' : 'of at least'} ${least}`;
  const to = most === undefined ? '' : `${from === '' ? ' of' : ' and'} at most ${most}`;
  return `a ${whole ? 'whole ' : ''}number${from}${to}`;
}

function own(value: Readonly<Record<string, unknown>>, name: string): unknown {
  return Object.hasOwn(value, name) ? value[name] : undefined;
}

function join(path: string, name: string): string {
  return path === '' ? name : `${path}.${name}`;
}

function should(path: string, what: string): string {
  return `${path === '' ? 'it' : `\`${path}\``} should ${what}`;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
