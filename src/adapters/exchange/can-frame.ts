/** A frame of a CAN bus with a 29-bit identifier, as SAE J1939 uses it. */
export interface CanFrame {
  readonly id: number;
  readonly data: Uint8Array;
}

/**
 * Reads a frame from a line of text: `18FEE500#40E20100FFFFFFFF`, `18FEE500 [8] 40 E2 01 00 FF FF FF FF`, with or without a time
 * and an interface before it. `null` for anything else.
 */
export function parseFrame(line: string): CanFrame | null {
  const match = /(?:^|\s)([0-9a-f]{8})(?:#|\s+\[[0-8]\]\s+|\s+)((?:[0-9a-f]{2}\s?){1,8})\s*$/i.exec(line.trim());
  if (match?.[1] === undefined || match[2] === undefined) return null;
  const bytes = match[2].match(/[0-9a-f]{2}/gi) ?? [];
  return { id: Number.parseInt(match[1], 16) & 0x1fffffff, data: Uint8Array.from(bytes, (byte) => Number.parseInt(byte, 16)) };
}

/** The parameter group of an identifier (SAE J1939-21): below PF 240 the second byte is an address and no part of it. */
export function parameterGroup(id: number): number {
  const page = (id >>> 24) & 0x3;
  const format = (id >>> 16) & 0xff;
  const specific = (id >>> 8) & 0xff;
  return (page << 16) | (format << 8) | (format < 240 ? 0 : specific);
}

/** The address of the sender: 0 is the first engine. */
export function sourceAddress(id: number): number {
  return id & 0xff;
}
