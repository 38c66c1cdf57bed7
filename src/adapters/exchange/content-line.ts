/**
 * Content lines of iCalendar (RFC 5545 §3.1): `NAME;PARAM=x:value`, folded and ended as the standard wants it.
 */
const OCTETS = 75;

/**
 * One content line, folded: no physical line is longer than 75 octets of UTF-8, each ends with CRLF, a continuation begins with a
 * space. Characters are never split.
 */
export function contentLine(name: string, value: string): string {
  const lines: string[] = [];
  let line = '';
  let octets = 0;
  for (const character of `${name}:${value}`) {
    const size = octetsOf(character);
    if (octets + size > OCTETS) {
      lines.push(line);
      line = ' ';
      octets = 1;
    }
    line += character;
    octets += size;
  }
  return [...lines, line].map((each) => `${each}\r\n`).join('');
}

/** A TEXT value (RFC 5545 §3.3.11): backslash, semicolon, comma and line feed escaped, other control characters left out. */
export function calendarText(text: string): string {
  return (
    text
      .replace(/\r\n?/g, '\n')
      .replace(/[\\;,]/g, (sign) => `\\${sign}`)
      .replace(/\n/g, '\\n')
      // §3.1 forbids control characters but the tab.
      .replace(/[\u0000-\u0008\u000a-\u001f\u007f]/g, '')
  );
}

function octetsOf(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}
