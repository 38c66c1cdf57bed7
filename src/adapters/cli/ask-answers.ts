import type { LooseDraft } from '../logbook/recording/loose-draft.js';
import { completeDraft } from '../logbook/recording/complete-draft.js';
import type { Recording, RecordingContext } from '../logbook/recording/complete-draft.js';
import { answer } from '../logbook/recording/question.js';
import type { Question } from '../logbook/recording/question.js';
import { safeText } from '../../render/safe-text.js';
import { complain } from './complain.js';
import type { Shell } from './shell.js';

/**
 * Completes a draft, and asks for what is missing where somebody is there to ask. An empty answer leaves a question open that may
 * stay open; the end of the input ends the asking.
 */
export async function askAnswers(shell: Shell, context: RecordingContext, said: LooseDraft): Promise<Recording> {
  const skipped = new Set<string>();
  for (let draft = said; ;) {
    const recording = completeDraft(context, draft);
    const question = recording.kind === 'refused' ? undefined : recording.questions.find(({ slot }) => !skipped.has(slot));
    if (question === undefined || shell.ask === undefined) return recording;
    const words = await shell.ask(prompt(question));
    if (words === null) return question.needed ? recording : { kind: 'questions', questions: [] };
    if (words.trim() === '' && !question.needed) {
      skipped.add(question.slot);
      continue;
    }
    const answered = answer(draft, question, words);
    if (answered.kind === 'answered') draft = answered.draft;
    else complain(shell, answered.problem);
  }
}

function prompt({ ask, choices, needed, unit }: Question): string {
  const list = choices.map(({ value, title }) => `  ${safeText(value)}: ${safeText(title)}\n`).join('');
  return `${list}${safeText(ask)}${unit === undefined ? '' : ` [${safeText(unit)}]`}${needed ? '' : ' (Enter: not known)'} `;
}
