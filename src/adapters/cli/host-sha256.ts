import type { Digest } from '../../base/sha256.js';

/** Node's own SHA-256. Loaded when it is asked for: that takes longer than to hash a short text. */
export async function hostSha256(): Promise<Digest> {
  const { hash } = await import('node:crypto');
  return (text) => hash('sha256', text);
}
