/**
 * The fingerprint of a text.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** SHA-256 of the text's UTF-8 bytes, in hex. */
export function textFingerprint(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}
