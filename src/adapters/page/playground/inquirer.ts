/// <reference lib="dom" />
/**
 * What the editor asks of the worker about a place in a file, and waits for: completions, and what is known of a word.
 */
import type { Completion as Option, CompletionContext, CompletionResult } from '@codemirror/autocomplete';
import type { Tooltip } from '@codemirror/view';
import type { Completion } from '../../../editor/complete.js';
import type { Hover } from '../../../editor/hover.js';
import { element } from '../view/element.js';
import type { EditorEvents } from './editor.js';
import type { Ask, Inquiry, Told } from './told.js';

type Answer = Extract<Told, { readonly number: number }>;

export interface Inquirer {
  readonly events: Pick<EditorEvents, 'completion' | 'hover'>;
  readonly answer: (told: Answer) => void;
}

export function inquirer(ask: (asked: Ask) => void): Inquirer {
  const waiting = new Map<number, (told: Answer | null) => void>();
  let number = 0;
  const inquire = (kind: Inquiry['ask'], path: string, offset: number): Promise<Answer | null> =>
    new Promise((resolve) => {
      number += 1;
      // The worker answers only the last one.
      for (const leave of waiting.values()) leave(null);
      waiting.clear();
      waiting.set(number, resolve);
      ask({ ask: kind, path, offset, number });
    });
  return {
    events: {
      completion: async (path, context) => {
        if (!isWanted(context)) return null;
        const told = await inquire('complete', path, context.pos);
        return told?.told === 'completions' && !context.aborted ? resultOf(told.completions, context) : null;
      },
      hover: async (path, offset) => {
        const told = await inquire('hover', path, offset);
        return told?.told === 'hover' && told.hover !== null ? tooltipOf(told.hover) : null;
      },
    },
    answer: (told) => {
      waiting.get(told.number)?.(told);
      waiting.delete(told.number);
    },
  };
}

/** While a word is typed, or when somebody asks. */
function isWanted(context: CompletionContext): boolean {
  return context.explicit || context.matchBefore(/[a-zA-Z][\w.-]*$/) !== null;
}

function resultOf(completions: readonly Completion[], { pos }: CompletionContext): CompletionResult | null {
  const [first] = completions;
  if (first === undefined) return null;
  const options = completions.map(({ label, detail, example }): Option => ({
    label,
    detail,
    ...(example === undefined ? {} : { info: example }),
  }));
  return { from: first.start, to: Math.max(first.end, pos), options, validFor: /^[\w.'°-]*$/ };
}

function tooltipOf({ at, paragraphs, example }: Hover): Tooltip {
  return {
    pos: at.start,
    end: at.end,
    above: true,
    create: () => ({
      dom: element(
        'div',
        { class: 'hover' },
        ...paragraphs.map((text) => element('p', {}, text)),
        example === undefined ? null : element('pre', {}, example),
      ),
    }),
  };
}
