import { assertNever } from '../../base/assert-never.js';

/** What can keep a logbook from being read or written, and where. Positions are line numbers counted from 1. */
export type LogbookTrouble =
  | { readonly kind: 'disk-full'; readonly path: string }
  | { readonly kind: 'read-only'; readonly path: string }
  | { readonly kind: 'no-folder'; readonly path: string }
  | { readonly kind: 'busy'; readonly path: string; readonly holder: string }
  | { readonly kind: 'broken-chain'; readonly path: string; readonly lines: readonly number[] }
  | { readonly kind: 'id-taken'; readonly path: string; readonly id: string }
  | { readonly kind: 'not-an-entry'; readonly path: string; readonly what: string }
  | { readonly kind: 'disk'; readonly path: string; readonly what: string };

/**
 * Thrown when an entry could **not** be put down: whatever was asked to be recorded is then not in the logbook, and what was there
 * before is untouched. `message` says what is wrong, `help` what to do about it.
 *
 * An error class, because the trouble lies in the world (a disk, a folder, another program), not in what the user wrote.
 */
export class LogbookError extends Error {
  override readonly name = 'LogbookError';
  readonly help: string;

  constructor(
    readonly trouble: LogbookTrouble,
    cause?: unknown,
  ) {
    const [message, help] = words(trouble);
    super(message, cause === undefined ? undefined : { cause });
    this.help = help;
  }
}

function words(trouble: LogbookTrouble): readonly [message: string, help: string] {
  const { path } = trouble;
  switch (trouble.kind) {
    case 'disk-full':
      return [`the disk that holds \`${path}\` is full; nothing was recorded`, 'Make room on the disk, then record it again.'];
    case 'read-only':
      return [
        `\`${path}\` cannot be written; nothing was recorded`,
        'Give yourself the right to write there, or keep the logbook in another folder.',
      ];
    case 'no-folder':
      return [`there is no folder for \`${path}\``, 'Make the folder first, or correct the path.'];
    case 'busy':
      return [
        `\`${path}\` is in use by ${trouble.holder}`,
        `Wait until it is done and try again. If you are sure that no program is writing, remove \`${path}.lock\`.`,
      ];
    case 'broken-chain':
      return [
        `\`${path}\` was changed after it was written, at line ${trouble.lines.join(', ')}`,
        'Put a good copy back, merge with one, or, if the change is meant, record again and accept the change (`--accept-changes`, `acceptChanges`): it stays marked.',
      ];
    case 'id-taken':
      return [`\`${path}\` already has another entry with the id \`${trouble.id}\``, 'Leave the id out, and a new one is given.'];
    case 'not-an-entry':
      return [`this is not a logbook entry: ${trouble.what}`, 'See the kinds of entry in docs/logbook.md.'];
    case 'disk':
      return [
        `the disk could not do it for \`${path}\`: ${trouble.what}`,
        'Nothing is taken as recorded. Check the disk, then record it again.',
      ];
    default:
      return assertNever(trouble);
  }
}

const BY_CODE: ReadonlyMap<string, 'disk-full' | 'read-only' | 'no-folder'> = new Map([
  ['ENOSPC', 'disk-full'],
  ['EDQUOT', 'disk-full'],
  ['EFBIG', 'disk-full'],
  ['EROFS', 'read-only'],
  ['EACCES', 'read-only'],
  ['EPERM', 'read-only'],
  ['ENOENT', 'no-folder'],
  ['ENOTDIR', 'no-folder'],
]);

/** Turns what the operating system said about `path` into a {@link LogbookError}; passes on one that is one already. */
export function asLogbookError(path: string, cause: unknown): LogbookError {
  if (cause instanceof LogbookError) return cause;
  const code = errorCode(cause);
  const kind = BY_CODE.get(code);
  if (kind !== undefined) return new LogbookError({ kind, path }, cause);
  return new LogbookError({ kind: 'disk', path, what: cause instanceof Error ? cause.message : code }, cause);
}

/** The system's short name for an error (`ENOSPC`), or an empty text. */
export function errorCode(cause: unknown): string {
  return typeof cause === 'object' && cause !== null && 'code' in cause && typeof cause.code === 'string' ? cause.code : '';
}
