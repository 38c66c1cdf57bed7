/**
 * One thing that is asked of hostile files: what one command answers, or one key in an editor. Each has to end within the bound.
 */

/** What is asked about: a schedule as text with the files beside it, or as the JSON of a graph; and a logbook. */
export interface HostileFiles {
  /** Path → text; `schedule.due` is the schedule. */
  readonly files?: Readonly<Record<string, string>>;
  readonly graph?: string;
  readonly logbook?: string;
}

/** How it ended. `refused`: in so many words; `answered`: with text. Anything thrown but a BudgetError is thrown on. */
export interface Ending {
  readonly kind: 'answered' | 'refused';
  /** Codes of diagnostics, kinds of logbook problems, the sentence about a graph, `budget`. */
  readonly said: readonly string[];
  /** All that a person would be shown. */
  readonly shown: string;
  /** What must hold of the answer besides: our own question, and no part of what the file takes. @throws Error where it does not. */
  readonly proof?: () => void;
}

export interface Question {
  readonly what: string;
  /** What has been asked before it in the same program, such as opening a text before a key is pressed. */
  readonly before?: readonly (() => void)[];
  readonly ask: () => Ending;
}

/** All questions one after the other, told as one. */
export function askAll(questions: readonly Question[]): Ending {
  const endings = questions.map(({ ask }) => ask());
  return {
    kind: endings.some(({ kind }) => kind === 'answered') ? 'answered' : 'refused',
    said: [...new Set(endings.flatMap(({ said }) => said))],
    shown: endings.map(({ shown }) => shown).join('\n'),
    proof: () => {
      for (const { proof } of endings) proof?.();
    },
  };
}
