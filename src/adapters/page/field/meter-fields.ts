/// <reference lib="dom" />
/**
 * Fields for what the machine's meters show.
 */
import { element } from '../view/element.js';
import { decimalOf, textField } from './controls.js';
import type { Field } from './field.js';

export interface MeterFields {
  readonly root: HTMLElement;
  /** Meter → what was typed; meters that were left out are not there. */
  readonly values: () => Readonly<Record<string, number>>;
}

/** One field a meter, the one that is read most first; what it showed last stands as a hint. */
export function meterFields(field: Field, hidden: readonly string[] = []): MeterFields {
  const fields = field.graph.meters
    .filter(({ id, fromOutings }) => !fromOutings && !hidden.includes(id))
    .map(({ id, title, unit }) => {
      const last = lastShown(field, id);
      return {
        id,
        ...textField(`${title} (${unit})`, { inputmode: 'decimal', placeholder: last === null ? 'not read yet' : `last ${last}` }),
      };
    });
  return {
    root: element('div', { class: 'meters' }, ...fields.map(({ root }) => root)),
    values: () =>
      Object.fromEntries(
        fields.flatMap(({ id, input }): readonly (readonly [string, number])[] => {
          const value = decimalOf(input.value);
          return value === null ? [] : [[id, value]];
        }),
      ),
  };
}

function lastShown({ entries }: Field, meter: string): number | null {
  const when = (at: number): string => `${entries[at]?.on ?? ''} ${entries[at]?.at ?? ''}`;
  let last = -1;
  entries.forEach((entry, at) => {
    if (entry.meters?.[meter] !== undefined && (last < 0 || when(at) >= when(last))) last = at;
  });
  return entries[last]?.meters?.[meter] ?? null;
}
