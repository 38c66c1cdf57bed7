/**
 * What Chevrotain says when a clause goes wrong, in one plain sentence.
 */
import { EOF, type IParserErrorMessageProvider, type IToken, type TokenType } from 'chevrotain';

/** A token as a message shows it. */
export function shown(token: IToken): string {
  if (token.tokenType === EOF) return 'the end of the file';
  const text = token.image.length > 40 ? `${token.image.slice(0, 39)}…` : token.image;
  return `\`${text}\``;
}

function label(kind: TokenType): string {
  return kind.LABEL ?? kind.name;
}

function oneOf(kinds: readonly TokenType[]): string {
  const labels = [...new Set(kinds.map(label))];
  const last = labels.pop() ?? 'something else';
  return labels.length === 0 ? last : `${labels.join(', ')} or ${last}`;
}

function sentence(expected: string, actual: IToken | undefined): string {
  return `Expected ${expected} here, not ${actual === undefined ? 'the end of the file' : shown(actual)}.`;
}

/** One sentence each, in the trade's words, with what the author wrote in backticks. */
export class PlainErrors implements IParserErrorMessageProvider {
  buildMismatchTokenMessage({ expected, actual }: { readonly expected: TokenType; readonly actual: IToken }): string {
    return sentence(label(expected), actual);
  }

  buildNotAllInputParsedMessage({ firstRedundant }: { readonly firstRedundant: IToken }): string {
    return `Nothing more was expected here, but ${shown(firstRedundant)} follows.`;
  }

  buildNoViableAltMessage(options: {
    readonly expectedPathsPerAlt: TokenType[][][];
    readonly actual: IToken[];
    readonly customUserDescription?: string;
  }): string {
    const firsts = options.expectedPathsPerAlt.flatMap((paths) => paths.flatMap((path) => path.slice(0, 1)));
    return sentence(options.customUserDescription ?? oneOf(firsts), options.actual[0]);
  }

  buildEarlyExitMessage(options: {
    readonly expectedIterationPaths: TokenType[][];
    readonly actual: IToken[];
    readonly customUserDescription?: string;
  }): string {
    const firsts = options.expectedIterationPaths.flatMap((path) => path.slice(0, 1));
    return sentence(options.customUserDescription ?? oneOf(firsts), options.actual[0]);
  }
}
