import { assertNever } from './assert-never.js';
import type { NumberShape, Shape, TextShape } from './shape.js';

/** The shapes of values without members. */
export type ScalarShape = Extract<Shape, { readonly is: 'text' | 'flag' | 'number' | 'one-of' | 'either' }>;

/** What should stand in the place of a value that does not fit, or `null` for one that does. */
export function scalarWanted(value: unknown, shape: ScalarShape): string | null {
  switch (shape.is) {
    case 'text':
      return typeof value === 'string' ? textWanted(value, shape) : 'a string';
    case 'flag':
      return typeof value === 'boolean' ? null : 'true or false';
    case 'number':
      return numberWanted(value, shape);
    case 'one-of':
      return shape.values.some((each) => each === value) ? null : `one of ${shape.values.join(', ')}`;
    case 'either':
      return shape.words.some((each) => each === value) || numberWanted(value, shape.number) === null
        ? null
        : `a number, or one of ${shape.words.join(', ')}`;
    default:
      return assertNever(shape);
  }
}

function textWanted(value: string, { least = 0, most = Infinity, forms, wanted = '' }: TextShape): string | null {
  if (value.length < least) return 'not empty';
  if (value.length > most) return `at most ${most} characters`;
  return forms === undefined || forms.every((form) => form.test(value)) ? null : wanted;
}

function numberWanted(value: unknown, { whole, least = -Infinity, over, most = Infinity }: NumberShape): string | null {
  if (typeof value !== 'number' || !Number.isFinite(value)) return whole ? 'a whole number' : 'a number';
  if (whole && !Number.isSafeInteger(value)) return 'a whole number';
  if (over === true && value <= least) return `more than ${least}`;
  if (value < least) return `at least ${least}`;
  return value > most ? `at most ${most}` : null;
}
