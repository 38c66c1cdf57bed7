import { describe, expect, it } from 'vitest';
import { parameterGroup, parseFrame, sourceAddress } from '../../../src/adapters/exchange/can-frame.js';
import { coolantTemperature, engineHours, engineReading } from '../../../src/adapters/exchange/engine-frames.js';
import type { CanFrame } from '../../../src/adapters/exchange/can-frame.js';

const frames = (...lines: string[]): CanFrame[] => lines.flatMap((line) => parseFrame(line) ?? []);

describe('SAE J1939 frames', () => {
  it('are read from a line of text', () => {
    for (const line of [
      '18FEE500#40E20100FFFFFFFF',
      '(1436509052.249713) can0 18FEE500#40E20100FFFFFFFF',
      'can0  18FEE500   [8]  40 E2 01 00 FF FF FF FF',
    ]) {
      expect(parseFrame(line)).toEqual({ id: 0x18fee500, data: Uint8Array.of(0x40, 0xe2, 1, 0, 255, 255, 255, 255) });
    }
    for (const line of ['', 'hello', '18FEE500#', '123#40', '18FEE500#4']) expect(parseFrame(line)).toBeNull();
  });

  it('have a parameter group and a sender (SAE J1939-21, from memory)', () => {
    expect(parameterGroup(0x18fee500)).toBe(65253);
    expect(parameterGroup(0x18feee00)).toBe(65262);
    // PF 0xEA is below 240: the next byte is the address asked, not part of the group.
    expect(parameterGroup(0x18eaff21)).toBe(0xea00);
    expect(sourceAddress(0x18fee521)).toBe(0x21);
  });

  it('hold engine hours at 0.05 h a bit (SPN 247) and degrees at 1 °C a bit − 40 (SPN 110)', () => {
    expect(engineHours(Uint8Array.of(0x40, 0xe2, 0x01, 0x00))).toEqual({ kind: 'value', value: 6172.8 });
    expect(coolantTemperature(Uint8Array.of(0x87))).toEqual({ kind: 'value', value: 95 });
    expect(engineHours(Uint8Array.of(0, 0, 0, 0))).toEqual({ kind: 'value', value: 0 });
    // The largest valid value, 0xFAFFFFFF: the sign bit must not count.
    expect(engineHours(Uint8Array.of(0xff, 0xff, 0xff, 0xfa))).toEqual({ kind: 'value', value: 4211081215 / 20 });
    expect(coolantTemperature(Uint8Array.of(0x00))).toEqual({ kind: 'value', value: -40 });
    expect(coolantTemperature(Uint8Array.of(0xfa))).toEqual({ kind: 'value', value: 210 });
  });

  // SAE J1939-71, table 1, from memory.
  it.each([
    [[0xff, 0xff, 0xff, 0xff], 'not-available'],
    [[0, 0, 0, 0xfe], 'error'],
    [[0, 0, 0, 0xfb], 'reserved'],
    [[0x40, 0xe2], 'too-short'],
  ])('refuse %j as %s', (bytes, why) => {
    expect(engineHours(Uint8Array.from(bytes))).toEqual({ kind: 'refused', why });
  });

  it.each([
    [0xff, 'not-available'],
    [0xfe, 'error'],
    [0xfb, 'reserved'],
  ])('refuse a coolant byte of %i as %s', (byte, why) => {
    expect(coolantTemperature(Uint8Array.of(byte))).toEqual({ kind: 'refused', why });
  });

  it('become one reading with the last good values of the engine', () => {
    const bus = frames(
      '18FEE500#40E20100FFFFFFFF',
      '18FEEE00#87FFFFFFFFFFFFFF',
      '18FEEE00#FFFFFFFFFFFFFFFF',
      '18FEE521#00000000FFFFFFFF',
      '18FEEE00#88FFFFFFFFFFFFFF',
    );
    expect(engineReading(bus, { on: '2026-05-12', at: '07:40', meter: 'engine', gauge: 'coolant' })).toEqual({
      entry: { kind: 'reading', on: '2026-05-12', at: '07:40', meters: { engine: 6172.8 }, readings: { coolant: 96 } },
      refused: ['not-available'],
    });
  });

  it('become nothing where nothing good came', () => {
    expect(engineReading(frames('18FEE500#FFFFFFFFFFFFFFFF'), { on: '2026-05-12', meter: 'engine' })).toEqual({
      entry: null,
      refused: ['not-available'],
    });
  });
});
