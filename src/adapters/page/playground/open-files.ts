/// <reference lib="dom" />
/**
 * An author's own files: chosen, dropped or pasted. They stay in this page and go nowhere.
 */
import { byId } from '../view/element.js';
import { type Desk, isLogbook } from './desk.js';

export function openFiles(onDesk: () => Readonly<Record<string, string>>, open: (desk: Desk) => void): void {
  const input = byId('own-files', HTMLInputElement);
  const said = byId('open-said', HTMLElement);
  const take = (named: readonly (readonly [string, string])[]): void => {
    const desk = deskOf(onDesk(), Object.fromEntries(named));
    said.textContent = typeof desk === 'string' ? desk : `Opened ${named.map(([name]) => name).join(', ')}.`;
    if (typeof desk !== 'string') open(desk);
  };
  const read = (files: Iterable<File>): void =>
    void Promise.all([...files].map(async (file) => [file.name, await file.text()] as const)).then(
      take,
      () => (said.textContent = 'That could not be read.'),
    );
  byId('open-files', HTMLButtonElement).addEventListener('click', () => input.click());
  input.addEventListener('change', () => {
    read(input.files ?? []);
    input.value = '';
  });
  addEventListener('dragover', (event) => event.preventDefault());
  addEventListener('drop', (event) => {
    if (event.dataTransfer === null || event.dataTransfer.files.length === 0) return;
    event.preventDefault();
    read(event.dataTransfer.files);
  });
  byId('new-schedule', HTMLButtonElement).addEventListener('click', () => take([['own.due', EMPTY]]));
}

const EMPTY = `schedule own "My machine"
  language 1
  edition 1 of 2026-01-01 by "Me"

meter engine "Hour meter" counts h

task engine-oil-level "Check the engine oil level"
  before each day's work
  warning "Hot oil burns. Stop the engine first."
`;

/**
 * The desk with these files put on it: a schedule that comes takes the place of the one there, with the parts of both; a logbook takes
 * the place of the logbook. One sentence where nothing can be made of them.
 *
 * @example deskOf({}, { 'saw.due': text }) // { files: { 'saw.due': text, 'empty.jsonl': '' }, main: 'saw.due', logbook: 'empty.jsonl' }
 */
export function deskOf(there: Readonly<Record<string, string>>, come: Readonly<Record<string, string>>): Desk | string {
  const names = Object.keys(come);
  const schedules = names.filter((name) => !isLogbook(name) && opensSchedule(come[name] ?? ''));
  const logbook = names.find(isLogbook);
  if (names.length === 0 || (schedules.length === 0 && logbook === undefined))
    return 'Choose a schedule (.due), a logbook (.jsonl), or both.';
  const main = schedules[0] ?? Object.keys(there).find((name) => !isLogbook(name)) ?? '';
  const oldLogbook = Object.keys(there).find(isLogbook);
  const parts = Object.entries(there).filter(
    ([name]) => !isLogbook(name) && (schedules.length === 0 || !opensSchedule(there[name] ?? '') || name.includes('/')),
  );
  const log = logbook ?? (schedules.length === 0 ? oldLogbook : undefined) ?? 'empty.jsonl';
  const texts = { ...Object.fromEntries(parts), ...come, [log]: come[log] ?? there[log] ?? '' };
  const { [main]: first = '', ...others } = texts;
  return { files: { [main]: first, ...others }, main, logbook: log };
}

function opensSchedule(text: string): boolean {
  return /^(?:\s*#[^\n]*\n|\s)*(?:schedule|variant)\b/.test(text);
}
