import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarUid, writeCalendar } from '../../../src/adapters/exchange/calendar-file.js';
import type { CalendarItem } from '../../../src/adapters/exchange/calendar-file.js';
import { dueCalendar } from '../../../src/adapters/exchange/due-calendar.js';
import { assess } from '../../../src/assess/assess.js';
import { dayOf } from '../../../src/values/civil.js';
import type { Day } from '../../../src/values/moment.js';
import { compileText } from '../../support/compile-text.js';
import { done, history, moment } from '../../support/history.js';

const STAMP = { stamp: '2026-05-12T08:30:00Z' };
const day = (text: string): Day => dayOf(text) ?? (NaN as Day);
const item = (changes: Partial<CalendarItem> = {}): CalendarItem => ({ uid: 'a@b', title: 'Oil', from: day('2026-06-30'), ...changes });

/** Read back by another implementation: ical.js. */
function readBack(text: string): ICAL.Event[] {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  return calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
}

const text = fc.string({ unit: 'binary', maxLength: 200 }).map((value) => value.replace(/[\u0000-\u001f\u007f]/g, '\n'));

describe('a calendar file (RFC 5545)', () => {
  it('has all-day events that end on the day after the last', () => {
    const [event] = readBack(writeCalendar([item({ to: day('2026-07-02') })], STAMP));
    expect(event?.startDate.isDate).toBe(true);
    expect([event?.startDate.toString(), event?.endDate.toString()]).toEqual(['2026-06-30', '2026-07-03']);
    expect(readBack(writeCalendar([item()], STAMP))[0]?.endDate.toString()).toBe('2026-07-01');
  });

  it('has a UTC time stamp and the given uid', () => {
    const [event] = readBack(writeCalendar([item()], STAMP));
    expect(event?.uid).toBe('a@b');
    expect(String(event?.component.getFirstPropertyValue('dtstamp'))).toBe('2026-05-12T08:30:00Z');
    expect(() => writeCalendar([], { stamp: '2026-05-12T08:30:00+02:00' })).toThrow(RangeError);
  });

  it.each([
    [168, '-P7D', -604800],
    [31, '-P1DT7H', -111600],
    [-7, 'PT7H', 25200],
    [0.5, '-PT30M', -1800],
    [0, 'PT0S', 0],
  ])('reminds %s hours before the day begins: %s', (hours, written, seconds) => {
    const calendar = writeCalendar([item({ remindHours: [hours] })], STAMP);
    expect(calendar).toContain(`TRIGGER:${written}\r\n`);
    const alarm = readBack(calendar)[0]?.component.getFirstSubcomponent('valarm');
    expect((alarm?.getFirstPropertyValue('trigger') as ICAL.Duration | undefined)?.toSeconds()).toBe(seconds);
    expect(alarm?.getFirstPropertyValue('action')).toBe('DISPLAY');
  });

  it('gives back every text, and no line is longer than 75 octets nor ended but by CRLF', () => {
    fc.assert(
      fc.property(text, text, (title, description) => {
        const calendar = writeCalendar([item({ title, description })], STAMP);
        expect(calendar.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        for (const line of calendar.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
        expect(new TextDecoder().decode(new TextEncoder().encode(calendar))).toBe(calendar);
        const [event] = readBack(calendar);
        expect(event?.summary).toBe(title);
        expect(event?.description).toBe(description);
      }),
    );
  });

  it('cannot be led to hold another event by a title', () => {
    const calendar = writeCalendar([item({ title: 'x\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nUID:evil' })], STAMP);
    expect(readBack(calendar)).toHaveLength(1);
  });
});

describe('what an assessment puts into the calendar', () => {
  const graph = compileText(
    'meter engine "Hours" counts h\ntask belt "Check the belt"\nevery 6 months\ntask oil "Change the oil"\nevery 100 h of engine',
  );
  const entries = history(['2026-01-31', done(['belt', 'oil'], { engine: 100 })]);
  const assessment = assess(graph, entries, moment('2026-05-12'));

  it('is each task with a due day; by a meter only where there is a forecast', () => {
    const items = dueCalendar(graph, assessment, 'serial 1234');
    expect(items.map((each) => [each.title, each.from])).toEqual([['Check the belt', day('2026-07-31')]]);
    const range = { from: day('2026-06-12'), likely: day('2026-06-20'), to: day('2026-07-03') };
    const more = dueCalendar(graph, assessment, 'serial 1234', new Map([['oil', range]]));
    expect(more.map((each) => each.from)).toEqual([day('2026-07-31'), day('2026-06-20')]);
    expect(more[1]?.description).toContain('between 2026-06-12 and 2026-07-03');
  });

  it('keeps its uid from export to export, and another for each machine and task', () => {
    expect(dueCalendar(graph, assessment, 'serial 1234')[0]?.uid).toBe(calendarUid('serial 1234', 'belt'));
    const uids = ['serial 1234', 'serial 1235'].flatMap((machine) => ['belt', 'oil'].map((task) => calendarUid(machine, task)));
    expect(new Set(uids).size).toBe(4);
  });
});
