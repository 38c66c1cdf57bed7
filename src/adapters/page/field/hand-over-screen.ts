/// <reference lib="dom" />
/**
 * What was written on this device and is not in the logbook yet: to be saved, copied or sent, and then counted as arrived.
 */
import type { Entry } from '../../../engine.js';
import { counted } from '../../../render/count-in-words.js';
import { entryInWords } from '../../../render/entry-in-words.js';
import { safeText } from '../../../render/safe-text.js';
import { formatDate } from '../../../values/civil.js';
import { button, element } from '../view/element.js';
import type { Field } from './field.js';
import type { Screen } from './screen.js';

export function handOverScreen(field: Field): Screen {
  const body = element('div', {});
  const said = element('p', { class: 'said', role: 'status' });
  let given: readonly string[] = [];
  const gave = (words: string, ids: readonly string[]): void => {
    given = ids;
    said.textContent = `${words} They stay on this device and count as not handed over until you say that they have arrived.`;
    refresh();
  };
  const refresh = (): void => {
    const { waiting } = field;
    const arrived = given.filter((id) => waiting.some((entry) => entry.id === id));
    body.replaceChildren(
      ...warnings(field),
      element(
        'p',
        { class: 'big' },
        waiting.length === 0 ? 'Everything is handed over.' : `${counted(waiting.length, 'entry', 'entries')} not yet handed over.`,
      ),
      ...(waiting.length === 0 ? [] : waysOut(field, gave, (problem) => (said.textContent = problem))),
      ...(arrived.length === 0
        ? []
        : [
            button(
              `${counted(arrived.length, 'entry has', 'entries have')} arrived: count as handed over`,
              () => {
                given = [];
                field.handOver(arrived);
                said.textContent = 'Counted as handed over.';
              },
              { class: 'wide main' },
            ),
          ]),
      element('ul', { class: 'waiting' }, ...waiting.map((entry) => waitingItem(entry, field))),
      element(
        'p',
        { class: 'small' },
        'On the computer: ',
        element('code', {}, 'duewright merge LOGBOOK FILE'),
        '. Every entry has an id of its own, so that handing over twice does no harm.',
      ),
    );
  };
  return { id: 'hand-over', title: 'Hand over', tab: 'Hand over', body: [said, body], refresh };
}

function warnings({ keeps, broken }: Field): readonly HTMLElement[] {
  const texts = [
    ...(keeps ? [] : ['This device does not keep what you write: hand it over before you close the page.']),
    ...(broken === 0 ? [] : [`${counted(broken, 'entry', 'entries')} kept on this device cannot be read.`]),
  ];
  return texts.map((text) => element('p', { class: 'why-hold' }, text));
}

function waysOut(
  field: Field,
  gave: (words: string, ids: readonly string[]) => void,
  failed: (problem: string) => void,
): readonly HTMLElement[] {
  const ids = (): readonly string[] => field.waiting.map(({ id }) => id);
  const file = (): File => new File([field.waitingLines], fileName(field), { type: 'application/x-ndjson' });
  const share = (): void => {
    navigator.share({ files: [file()] }).then(
      () => gave('Shared.', ids()),
      () => failed('Not shared.'),
    );
  };
  const copy = (): void => {
    copyText(field.waitingLines).then(
      () => gave('Copied: paste it into a message or a file.', ids()),
      () => failed('This browser does not let the page copy: save a file instead.'),
    );
  };
  return [
    button(
      'Save as a file',
      () => {
        saveFile(file());
        gave('Saved as a file.', ids());
      },
      { class: 'wide main' },
    ),
    button('Copy as text', copy, { class: 'wide' }),
    ...('canShare' in navigator && navigator.canShare({ files: [file()] })
      ? [button('Send by another app', share, { class: 'wide' })]
      : []),
  ];
}

function fileName(field: Field): string {
  return `${field.graph.schedule.name}-${formatDate(field.now().day)}.jsonl`;
}

function saveFile(file: File): void {
  const url = URL.createObjectURL(file);
  const link = element('a', { href: url, download: file.name });
  link.click();
  // Some browsers read the file only after the click has returned.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Pages from disk have no clipboard of their own in some browsers; a selection can be copied everywhere. */
async function copyText(text: string): Promise<void> {
  if ('clipboard' in navigator) {
    try {
      await navigator.clipboard.writeText(text);
      return;
    } catch {
      // Falls through to the selection.
    }
  }
  const area = element('textarea', { class: 'off-screen', 'aria-hidden': 'true' });
  area.value = text;
  document.body.append(area);
  area.select();
  // eslint-disable-next-line @typescript-eslint/no-deprecated -- the only way from disk where the clipboard is refused
  const copied = document.execCommand('copy');
  area.remove();
  if (!copied) throw new Error('not copied');
}

function waitingItem(entry: Entry, field: Field): HTMLElement {
  const words = entryInWords(entry, field.names);
  const when = `${entry.on}${entry.at === undefined ? '' : ` ${entry.at}`}`;
  const taken = field.waiting.some((each) => each.kind === 'void' && each.entry === entry.id);
  return element(
    'li',
    {},
    element('span', { class: 'when' }, safeText(when)),
    ' ',
    taken ? element('del', {}, words) : words,
    entry.kind === 'void' || taken
      ? null
      : button('Take back', () => field.write({ kind: 'void', entry: entry.id }), { 'aria-label': `Take back: ${words}` }),
  );
}
