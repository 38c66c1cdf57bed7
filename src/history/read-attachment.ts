import { compareTexts } from '../base/compare-texts.js';
import { attachmentEdges } from './edges.js';
import type { Layout } from './facts.js';
import { byDay } from './by-day.js';
import type { BareOuting } from './read-outings.js';
import type { Edge } from './read-spells.js';
import type { Spell, Stamped, Timeline } from './timeline.js';

/** What a history says of one attachment at one time. */
interface Step extends Stamped {
  readonly says: 'put-on' | 'taken-off' | 'used' | 'left-out';
}

/** Attachment → when it was on; every attachment that the schedule has. */
export function readAttachments({ dated, names, strays, outings }: Layout): Timeline['attachments'] {
  return new Map([...attachmentEdges(dated, names, strays)].map(([id, edges]) => [id, readAttachment(id, edges, outings)]));
}

/**
 * When an attachment was on, in order.
 *
 * An entry that puts it on or takes it off says so. An outing with it puts it on too, where no entry had: it is then on from the
 * start of that outing until an entry says something else, or until an outing without it begins.
 */
function readAttachment(attachment: string, edges: readonly Edge[], outings: readonly BareOuting[]): readonly Spell[] {
  const spells: Spell[] = [];
  let open: { readonly begin: Stamped; readonly noted: boolean } | null = null;
  for (const day of byDay(stepsOf(attachment, edges, outings))) {
    for (const { says, entry, when } of inOrder(day, open !== null)) {
      const stamp: Stamped = { entry, when };
      const ends: boolean = open !== null && (says === 'taken-off' || (!open.noted && (says === 'put-on' || says === 'left-out')));
      if (open !== null && ends) {
        spells.push({ begin: open.begin, end: stamp });
        open = null;
      }
      if (open === null && (says === 'put-on' || says === 'used')) open = { begin: stamp, noted: says === 'put-on' };
    }
  }
  return open === null ? spells : [...spells, { begin: open.begin, end: null }];
}

function stepsOf(attachment: string, edges: readonly Edge[], outings: readonly BareOuting[]): readonly Step[] {
  const noted = edges.map(({ entry, when, edge }): Step => ({ entry, when, says: edge === 'begin' ? 'put-on' : 'taken-off' }));
  const used = outings.map(({ entry, when, attachments }): Step => ({
    entry,
    when,
    says: attachments.includes(attachment) ? 'used' : 'left-out',
  }));
  return [...noted, ...used];
}

/**
 * The steps of one day. Where minutes do not tell: put on, then used, then taken off; but one that was on at the start of the day and was
 * both taken off and put on was put on last.
 */
function inOrder(day: readonly Step[], wasOn: boolean): readonly Step[] {
  const turned = wasOn && day.some(({ says }) => says === 'put-on') && day.some(({ says }) => says === 'taken-off');
  const place = ({ says, when }: Step): number => {
    if (when.minute !== null) return when.minute;
    if (says === 'put-on') return turned ? Infinity : -2;
    if (says === 'taken-off') return turned ? -2 : Infinity;
    return -1;
  };
  return [...day].sort((a, b) => (place(a) === place(b) ? compareTexts(a.entry, b.entry) : place(a) - place(b)));
}
