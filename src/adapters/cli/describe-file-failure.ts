const causes: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'its owner does not allow it',
  EPERM: 'its owner does not allow it',
  EROFS: 'the disk does not take writing',
  ENOSPC: 'the disk is full',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is not a folder',
  ELOOP: 'its links go round in a circle',
  ERR_ENCODING_INVALID_ENCODED_DATA: 'it is not a UTF-8 text',
};

/** Why a file could not be read or written, in one sentence. */
export function describeFileFailure(path: string, what: 'read' | 'written', error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const cause = what === 'written' && code === 'ENOENT' ? 'there is no such folder' : causes[code];
  return `\`${path}\` cannot be ${what}: ${cause ?? (error instanceof Error ? error.message : 'the reason is not known')}.`;
}
