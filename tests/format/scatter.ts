/**
 * Lays tokens out at random: spaces, tabs, line ends of both kinds, and comments wherever they may stand.
 */
const spaces = [' ', '  ', '\t', '\n', '\r\n', ' \n   ', '\n\n', '\n \t\n\n', '      '] as const;
const remarks = ['# plain', '#', '# "quotes" and 100 h', '#task x "no task"', '# trailing blanks   ', '## ünïcode ⚠'] as const;

export interface ScatterOptions {
  /** How many of the places between tokens get a comment, 0 to 1. */
  readonly comments: number;
  /** Whether lines may be left empty. */
  readonly emptyLines: boolean;
}

/** A text with these tokens in this order; `random` gives numbers in [0, 1). */
export function scatter(tokens: readonly string[], random: () => number, { comments, emptyLines }: ScatterOptions): string {
  let count = 0;
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const space = (): string => {
    const some = pick(spaces);
    return emptyLines ? some : some.replace(/(\r?\n)\s*\n/g, '$1');
  };
  const between = (): string => {
    let text = space();
    while (random() < comments) text += `${pick(remarks)} ${(count += 1)}${pick(['\n', '\r\n', '\n\n'])}${random() < 0.5 ? '' : space()}`;
    return text;
  };
  return tokens.map((token) => (random() < 0.7 ? between() : ' ') + token).join('') + between();
}

/** Everything but white space, in order: what a layout must leave alone. */
export function inkOf(text: string): readonly string[] {
  const found = text.match(/"(?:[^"\\\r\n]|\\[^\r\n])*"|#[^\r\n]*|[(),]|[^\s"#(),]+/g) ?? [];
  return found.map((each) => each.trimEnd());
}

/** The comments alone. */
export function commentsIn(text: string): readonly string[] {
  return inkOf(text).filter((each) => each.startsWith('#'));
}
