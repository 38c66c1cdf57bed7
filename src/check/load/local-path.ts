/**
 * Paths that a schedule may name: relative, literal, and below the folder of the file that names them.
 *
 * INVARIANT: a path that is accepted cannot leave the folder that it starts from, whatever the host's loader does with it.
 */

/** Why a path is refused, in a few words. */
export type PathRefusal =
  | 'it is empty'
  | 'it is absolute'
  | 'it climbs out of its folder'
  | 'it has a backslash'
  | 'it names a scheme or a drive'
  | 'it has an empty part'
  | 'it has a sign that no path may have';

/** The path that `written` means in a file at `from`; or why it is refused. `.due` is added to a last part without a dot. */
export function localPath(from: string, written: string): { readonly path: string } | { readonly refused: PathRefusal } {
  const refused = refusal(written);
  if (refused !== undefined) return { refused };
  const folder = from.slice(0, from.lastIndexOf('/') + 1);
  const file = written.slice(written.lastIndexOf('/') + 1);
  return { path: folder + written + (file.includes('.') ? '' : '.due') };
}

function refusal(written: string): PathRefusal | undefined {
  if (written === '') return 'it is empty';
  if (written.includes('\\')) return 'it has a backslash';
  if (written.startsWith('/')) return 'it is absolute';
  if (written.includes(':')) return 'it names a scheme or a drive';
  if (/[\p{Cc}\p{Cf}*?"<>|%~]/u.test(written)) return 'it has a sign that no path may have';
  const parts = written.split('/');
  if (parts.includes('..') || parts.includes('.')) return 'it climbs out of its folder';
  return parts.includes('') ? 'it has an empty part' : undefined;
}
