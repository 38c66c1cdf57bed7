/** Node's own SHA-256, as hex digits of a text's UTF-8 bytes. Loaded when it is asked for: that takes longer than to hash a short text. */
export async function hostSha256(): Promise<(text: string) => string> {
  const { createHash } = await import('node:crypto');
  return (text) => createHash('sha256').update(text).digest('hex');
}
