/// <reference lib="dom" />
/**
 * Sliders over time and over hours, and the work that is intended.
 */
import { dayInWords } from '../../../render/dates-in-words.js';
import { dayOf, formatDate } from '../../../values/civil.js';
import type { Day } from '../../../values/moment.js';
import { numberText } from '../../../values/number-text.js';
import { byId, element } from '../view/element.js';
import { type Supposing, USUAL } from './desk.js';
import type { MachineView, MeterView, NamedView } from './told.js';

const DAYS_AHEAD = 730;
const MORE_AT_MOST = 500;

/** Owns what is supposed. */
export class SupposingPanel {
  private supposing: Supposing = USUAL;
  private machine: MachineView | null = null;
  private readonly day = byId('when', HTMLInputElement);
  private readonly date = byId('when-date', HTMLInputElement);
  private readonly meter = byId('meter', HTMLSelectElement);
  private readonly more = byId('more', HTMLInputElement);
  private readonly moreWords = byId('more-words', HTMLOutputElement);
  private readonly keepUp = byId('keep-up', HTMLInputElement);
  private readonly works = byId('works', HTMLInputElement);
  private readonly choices = byId('work-choices', HTMLElement);
  private built = '';

  constructor(private readonly changed: (supposing: Supposing) => void) {
    this.day.addEventListener('input', () => this.setDay(Number(this.day.value)));
    this.date.addEventListener('change', () => {
      const day = dayOf(this.date.value);
      if (day !== null) this.setDay(day);
    });
    this.more.addEventListener('input', () => {
      this.keepUp.checked = false;
      this.set({ more: Number(this.more.value) });
    });
    this.meter.addEventListener('change', () => this.set({ meter: this.meter.value, more: 0 }));
    this.keepUp.addEventListener('change', () => this.set(this.keepUp.checked ? {} : { more: 0 }));
    this.works.addEventListener('change', () => this.set({ works: this.works.checked }));
  }

  /** Another desk: everything as usual again. */
  reset(): void {
    this.supposing = USUAL;
    this.keepUp.checked = false;
    this.works.checked = USUAL.works;
    this.built = '';
  }

  show(machine: MachineView): void {
    this.machine = machine;
    const meter = this.chosen();
    this.build(machine);
    this.day.min = String(machine.firstDay);
    this.day.max = String(machine.lastDay + DAYS_AHEAD);
    this.day.value = String(machine.day);
    this.day.setAttribute('aria-valuetext', dayInWords(machine.day as Day));
    this.date.value = formatDate(machine.day as Day);
    this.more.disabled = meter?.shown == null;
    this.more.max = String(MORE_AT_MOST);
    if (this.keepUp.checked && meter?.atRate != null) this.follow(meter);
    this.more.value = String(this.supposing.more);
    const words = meter === undefined ? '' : this.words(meter);
    this.moreWords.textContent = words;
    this.more.setAttribute('aria-valuetext', words);
    this.keepUp.disabled = meter?.atRate == null;
  }

  private words({ shown, unit }: MeterView): string {
    const { more } = this.supposing;
    if (shown === null) return 'never read';
    return more === 0
      ? `${numberText(shown)} ${unit} as recorded`
      : `${numberText(shown + more)} ${unit}: ${numberText(more)} ${unit} more than recorded`;
  }

  /** Hours that follow the date are worked out when it is known what the record says by then. */
  private follow({ atRate }: MeterView): void {
    const more = Math.round(Math.min(MORE_AT_MOST, Math.max(0, atRate ?? 0)) * 10) / 10;
    if (more !== this.supposing.more) this.set({ more });
  }

  private chosen(): MeterView | undefined {
    const meters = this.machine?.meters ?? [];
    return meters.find(({ id }) => id === this.supposing.meter) ?? meters[0];
  }

  private setDay(day: number): void {
    this.set({ day });
  }

  private set(change: Partial<Supposing>): void {
    this.supposing = { ...this.supposing, meter: this.supposing.meter ?? this.chosen()?.id ?? null, ...change };
    this.changed(this.supposing);
  }

  /** The choices are built anew only when the schedule offers others. */
  private build({ meters, duties, attachments }: MachineView): void {
    const offered = JSON.stringify([meters.map(({ id, title }) => [id, title]), duties, attachments]);
    if (offered === this.built) return;
    this.built = offered;
    this.meter.replaceChildren(...meters.map(({ id, title }) => element('option', { value: id }, title)));
    this.meter.value = this.chosen()?.id ?? '';
    this.choices.replaceChildren(...this.boxes('attachments', 'with', attachments), ...this.boxes('duties', 'in', duties));
  }

  private boxes(key: 'duties' | 'attachments', before: string, things: readonly NamedView[]): readonly HTMLElement[] {
    return things.map(({ id, title }) => {
      const box = element('input', { type: 'checkbox', checked: this.supposing[key].includes(id) });
      box.addEventListener('change', () =>
        this.set({ [key]: box.checked ? [...this.supposing[key], id] : this.supposing[key].filter((each) => each !== id) }),
      );
      return element('label', { class: 'choice' }, box, ` ${before} ${title}`);
    });
  }
}
