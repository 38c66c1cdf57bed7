/**
 * SHA-256 of a text (FIPS 180-4, section 6.2).
 *
 * Ours, because a page that checks a graph's fingerprint would else carry a library four times as long. Texts of megabytes are
 * better given to the host's own: whoever hashes those can hand it in.
 */

/** The SHA-256 of a text's UTF-8 bytes, as 64 hex digits. */
export type Digest = (text: string) => string;

/** Whatever hashes much may be handed the host's own, which is several times as quick as ours. */
export interface WithDigest {
  readonly sha256?: Digest | undefined;
}

/** Every browser and Node.js have it; the language's own types do not. */
declare const TextEncoder: new () => { encode(text: string): Uint8Array };

/** The first 32 bits of what follows the point in the square roots of the first 8 primes. */
const START = [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19];
/** The same of the cube roots of the first 64. */
const ROUND = /* @__PURE__ */ new Int32Array([
  0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98, 0x12835b01, 0x243185be,
  0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa,
  0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85,
  0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3,
  0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f,
  0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
]);

const encoder = /* @__PURE__ */ new TextEncoder();

/**
 * The hash of the text's UTF-8 bytes, as 64 hex digits.
 *
 * @example sha256('abc') // 'ba7816bf…f20015ad'
 */
export function sha256(text: string): string {
  const words = padded(encoder.encode(text));
  const state = Int32Array.from(START);
  const schedule = new Int32Array(64);
  for (let at = 0; at < words.length; at += 16) mix(state, schedule, words, at);
  let hex = '';
  for (const word of state) hex += fourDigits(word >>> 16) + fourDigits(word & 0xffff);
  return hex;
}

/** Half a word in hex: as a whole, its number would be no small integer, which takes many times longer to write. */
function fourDigits(half: number): string {
  return (0x10000 + half).toString(16).slice(1);
}

/** The bytes as big-endian words, with a 1 bit after them and their number of bits at the end of the last block of 16. */
function padded(bytes: Uint8Array): Int32Array {
  const length = ((bytes.length + 8) >> 6) * 16 + 16;
  const words = new Int32Array(length);
  for (let at = 0; at < bytes.length; at += 1) words[at >> 2] = (words[at >> 2] ?? 0) | ((bytes[at] ?? 0) << (24 - (at & 3) * 8));
  words[bytes.length >> 2] = (words[bytes.length >> 2] ?? 0) | (0x80 << (24 - (bytes.length & 3) * 8));
  words[length - 2] = Math.floor(bytes.length / 0x20000000);
  words[length - 1] = bytes.length << 3;
  return words;
}

/** One block: its schedule of 64 words, and as many rounds over the eight words of the state. In one piece, because this is where the time goes. */
function mix(state: Int32Array, w: Int32Array, words: Int32Array, at: number): void {
  let a = state[0] ?? 0;
  let b = state[1] ?? 0;
  let c = state[2] ?? 0;
  let d = state[3] ?? 0;
  let e = state[4] ?? 0;
  let f = state[5] ?? 0;
  let g = state[6] ?? 0;
  let h = state[7] ?? 0;
  for (let i = 0; i < 64; i += 1) {
    const word = i < 16 ? (words[at + i] ?? 0) : next(w, i);
    w[i] = word;
    const far = ((e >>> 6) | (e << 26)) ^ ((e >>> 11) | (e << 21)) ^ ((e >>> 25) | (e << 7));
    const one = (h + far + ((e & f) ^ (~e & g)) + (ROUND[i] ?? 0) + word) | 0;
    const near = ((a >>> 2) | (a << 30)) ^ ((a >>> 13) | (a << 19)) ^ ((a >>> 22) | (a << 10));
    const two = (near + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + one) | 0;
    d = c;
    c = b;
    b = a;
    a = (one + two) | 0;
  }
  state[0] = (state[0] ?? 0) + a;
  state[1] = (state[1] ?? 0) + b;
  state[2] = (state[2] ?? 0) + c;
  state[3] = (state[3] ?? 0) + d;
  state[4] = (state[4] ?? 0) + e;
  state[5] = (state[5] ?? 0) + f;
  state[6] = (state[6] ?? 0) + g;
  state[7] = (state[7] ?? 0) + h;
}

/** A word of the schedule past the 16 of the block, from those before it. */
function next(w: Int32Array, i: number): number {
  const x = w[i - 15] ?? 0;
  const y = w[i - 2] ?? 0;
  const low = ((x >>> 7) | (x << 25)) ^ ((x >>> 18) | (x << 14)) ^ (x >>> 3);
  const high = ((y >>> 17) | (y << 15)) ^ ((y >>> 19) | (y << 13)) ^ (y >>> 10);
  return ((w[i - 16] ?? 0) + low + (w[i - 7] ?? 0) + high) | 0;
}
