/**
 * Engine hours and coolant temperature from SAE J1939 frames.
 *
 * Scales: SPN 247 in PGN 65253, bytes 1 to 4, 0.05 h a bit; SPN 110 in PGN 65262, byte 1, 1 °C a bit from −40 °C. The ranges of
 * "error" and "not available" are those of SAE J1939-71, table 1 (from memory).
 */
import type { Draft } from '../logbook/plan-append.js';
import { parameterGroup, sourceAddress } from './can-frame.js';
import type { CanFrame } from './can-frame.js';

/** A value, or why there is none: what a sender marks as missing must never be recorded as a number. */
export type Signal = { readonly kind: 'value'; readonly value: number } | { readonly kind: 'refused'; readonly why: Refusal };
/** Why a frame gives no value. */
export type Refusal = 'not-available' | 'error' | 'reserved' | 'too-short';

const ENGINE_HOURS_GROUP = 65253;
const ENGINE_TEMPERATURE_GROUP = 65262;

/** @example engineHours(Uint8Array.of(0x40, 0xe2, 0x01, 0x00)) // { kind: 'value', value: 6172.8 } */
export function engineHours(data: Uint8Array): Signal {
  // 20 bits an hour; dividing keeps 6172.8 from becoming 6172.800000000001.
  return signal(data, 4, (bits) => bits / 20);
}

/** @example coolantTemperature(Uint8Array.of(0x87)) // { kind: 'value', value: 95 } */
export function coolantTemperature(data: Uint8Array): Signal {
  return signal(data, 1, (bits) => bits - 40);
}

function signal(data: Uint8Array, size: number, scale: (bits: number) => number): Signal {
  if (data.length < size) return { kind: 'refused', why: 'too-short' };
  const top = data[size - 1] ?? 0xff;
  if (top === 0xff) return { kind: 'refused', why: 'not-available' };
  if (top === 0xfe) return { kind: 'refused', why: 'error' };
  if (top > 0xfa) return { kind: 'refused', why: 'reserved' };
  // Little-endian; not by shifts, which would make the sign bit count.
  return { kind: 'value', value: scale(data.subarray(0, size).reduceRight((sum, byte) => sum * 256 + byte, 0)) };
}

/** Where the values of a bus go in the logbook. */
export interface EngineTarget {
  readonly on: string;
  readonly at?: string;
  /** The hour meter's id. */
  readonly meter?: string;
  /** The coolant gauge's id; it must read °C. */
  readonly gauge?: string;
  /** Take frames of this sender only; 0, the first engine, if not given. */
  readonly source?: number;
}

/** The last good value of each kind in `frames` as one reading, and what was refused on the way. `entry` is `null` if there was none. */
export function engineReading(
  frames: readonly CanFrame[],
  target: EngineTarget,
): { readonly entry: Draft | null; readonly refused: readonly Refusal[] } {
  const refused: Refusal[] = [];
  const last = (group: number, read: (data: Uint8Array) => Signal): number | undefined => {
    const own = frames.filter(({ id }) => parameterGroup(id) === group && sourceAddress(id) === (target.source ?? 0));
    const signals = own.map(({ data }) => read(data));
    refused.push(...signals.flatMap((each) => (each.kind === 'refused' ? [each.why] : [])));
    return signals.flatMap((each) => (each.kind === 'value' ? [each.value] : [])).at(-1);
  };
  const hours = target.meter === undefined ? undefined : last(ENGINE_HOURS_GROUP, engineHours);
  const degrees = target.gauge === undefined ? undefined : last(ENGINE_TEMPERATURE_GROUP, coolantTemperature);
  if (hours === undefined && degrees === undefined) return { entry: null, refused };
  const entry: Draft = {
    kind: 'reading',
    on: target.on,
    ...(target.at === undefined ? {} : { at: target.at }),
    ...(hours === undefined || target.meter === undefined ? {} : { meters: { [target.meter]: hours } }),
    ...(degrees === undefined || target.gauge === undefined ? {} : { readings: { [target.gauge]: degrees } }),
  };
  return { entry, refused };
}
