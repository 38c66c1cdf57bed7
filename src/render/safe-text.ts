/**
 * Text from outside (titles, notes, ids) made harmless for a terminal.
 *
 * Law: the result holds no control characters (C0, C1, DEL), no marks that turn the direction of writing, and no line breaks; white
 * space is folded. What was taken out is shown as U+FFFD, so that nothing disappears unseen.
 */
// eslint-disable-next-line no-control-regex -- control characters are what this is about
const UNSAFE = /[\u0000-\u0008\u000e-\u001f\u007f-\u009f\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\u{e0000}-\u{e007f}]/gu;

/** One line of safe text. */
export function safeText(text: string): string {
  return safeSigns(text.replace(/[\t\n\v\f\r\u2028\u2029 ]+/g, ' ')).trim();
}

/** The same with its white space and its lines as they are. */
export function safeSigns(text: string): string {
  return text.replace(UNSAFE, '\ufffd');
}
