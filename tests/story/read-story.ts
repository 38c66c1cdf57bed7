/**
 * The story in docs/story.md as steps: files that it shows, and commands with what they answer.
 *
 *     <!-- today is 2024-03-02 18:00 -->      what the clock shows from here on
 *     ```csv summer.csv                       a file, written before the commands that follow
 *     ```console                              commands, each after a $, with their answers below
 */
export type StoryStep =
  | { readonly kind: 'today'; readonly when: string }
  | { readonly kind: 'file'; readonly name: string; readonly text: string }
  | { readonly kind: 'command'; readonly command: string; readonly answer: string; readonly from: number; readonly to: number };

const PIECE = /<!-- today is ([^>]+?) -->|^```csv (\S+)\n([\s\S]*?)^```$|^```console\n([\s\S]*?)^```$/gm;

/** All steps in order; a command's `from` and `to` are where its answer stands in the text. */
export function readStory(markdown: string): readonly StoryStep[] {
  return [...markdown.matchAll(PIECE)].flatMap((piece): readonly StoryStep[] => {
    const [whole, when, name, text, session] = piece;
    if (when !== undefined) return [{ kind: 'today', when }];
    if (name !== undefined) return [{ kind: 'file', name, text: text ?? '' }];
    return session === undefined ? [] : commandsIn(session, piece.index + whole.indexOf(session));
  });
}

function commandsIn(session: string, offset: number): readonly StoryStep[] {
  return [...session.matchAll(/^\$ ([^\n]*)\n((?:(?!\$ )[^\n]*\n)*)/gm)].map((match) => {
    const [whole, command = '', answer = ''] = match;
    const to = offset + match.index + whole.length;
    return { kind: 'command', command, answer, from: to - answer.length, to };
  });
}

/** The words of a command line; those in quotes stay together. */
export function wordsOf(command: string): readonly string[] {
  return (command.match(/"[^"]*"|\S+/g) ?? []).map((word) => word.replace(/^"(.*)"$/, '$1'));
}
