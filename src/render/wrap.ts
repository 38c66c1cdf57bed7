/**
 * Lines of a given width, counted in columns as a terminal shows them.
 */

// eslint-disable-next-line no-control-regex -- the escapes of a paint function take no column
const ESCAPES = /\u001b\[[0-9;]*m/g;
// Most lines are this, and each sign takes one column.
const PLAIN = /^[ -~]*$/;
const COMBINING = /\p{Mark}/u;
const WIDE =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;

/** Columns that a line takes; escapes of colour take none, combining marks none, wide characters two. */
export function columns(line: string): number {
  if (PLAIN.test(line)) return line.length;
  let count = 0;
  for (const sign of line.replace(ESCAPES, '')) {
    if (!COMBINING.test(sign)) count += WIDE.test(sign) ? 2 : 1;
  }
  return count;
}

/** Fills up with spaces to the width; a longer text stays as it is. */
export function pad(text: string, width: number, side: 'left' | 'right' = 'right'): string {
  const fill = ' '.repeat(Math.max(0, width - columns(text)));
  return side === 'right' ? text + fill : fill + text;
}

// A number and its unit, and the parts of a date, stay on one line.
const GLUED =
  /(\d) (?=(?:h|min|s|km|L|mL|m³|V|kPa|MPa|°[CF]|%|(?:calendar )?months?|years?|weeks?|days?|hours?|minutes?)(?![\p{L}\d])|(?:January|February|March|April|May|June|July|August|September|October|November|December)\b)/gu;
const MONTH_AND_YEAR = /(January|February|March|April|May|June|July|August|September|October|November|December) (?=\d{4}\b)/g;
const GLUE = '\u00a0';

function glue(text: string): string {
  return text.replace(GLUED, `$1${GLUE}`).replace(MONTH_AND_YEAR, `$1${GLUE}`);
}

/** Breaks at spaces; a word longer than the width is broken where it must be. No line is empty unless the text is. */
export function wrap(text: string, width: number): readonly string[] {
  const room = Math.max(8, width);
  const lines: string[] = [];
  let line = '';
  for (const word of glue(text)
    .split(' ')
    .flatMap((each) => pieces(each, room))) {
    if (line === '') line = word;
    else if (columns(line) + 1 + columns(word) <= room) line += ` ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line].map((each) => each.replaceAll(GLUE, ' '));
}

function pieces(word: string, room: number): readonly string[] {
  if (columns(word) <= room) return [word];
  const parts: string[] = [];
  let part = '';
  let taken = 0;
  for (const sign of word) {
    const wide = columns(sign);
    if (taken + wide > room) {
      parts.push(part);
      part = '';
      taken = 0;
    }
    part += sign;
    taken += wide;
  }
  return [...parts, part];
}

/** A label in the margin with its text beside it, as many lines as it takes. */
export function labelled(
  label: string,
  text: string,
  width: number,
  margin = 10,
  dress: (label: string) => string = (plain) => plain,
): readonly string[] {
  const [first = '', ...rest] = wrap(text, width - margin);
  const indent = ' '.repeat(margin);
  return [dress(label) + ' '.repeat(Math.max(1, margin - columns(label))) + first, ...rest.map((line) => indent + line)];
}
