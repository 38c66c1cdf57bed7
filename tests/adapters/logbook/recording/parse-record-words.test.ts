import { describe, expect, it } from 'vitest';
import { RECORD_EXAMPLES, parseRecordWords } from '../../../../src/adapters/logbook/recording/parse-record-words.js';
import { completeDraft } from '../../../../src/adapters/logbook/recording/complete-draft.js';
import type { Entry } from '../../../../src/history/entry.js';
import { moment } from '../../../support/history.js';
import { tractor } from './tractor.js';

const words = (text: string): string[] => (text.match(/"[^"]*"|\S+/g) ?? []).map((word) => word.replaceAll('"', ''));
const said = (text: string): unknown => {
  const read = parseRecordWords(tractor, words(text));
  return read.kind === 'said' ? read.draft : read.problem;
};

describe('a few words', () => {
  it.each([
    ['hours 1302.4', { kind: 'reading', meters: { engine: 1302.4 } }],
    ['hours 1302.4 h', { kind: 'reading', meters: { engine: 1302.4 } }],
    ['hours 1302.4, shaft 210', { kind: 'reading', meters: { engine: 1302.4, shaft: 210 } }],
    ['hours 210 h of shaft on 2026-05-11 08:30', { kind: 'reading', on: '2026-05-11', at: '08:30', meters: { shaft: 210 } }],
    ['read coolant 92 °C, engine-oil below low', { kind: 'reading', readings: { coolant: 92, 'engine-oil': 'below-low' } }],
    ['read coolant 212 °F, engine-oil 3/4', { kind: 'reading', readings: { coolant: 100, 'engine-oil': 0.75 } }],
    ['outing 4h', { kind: 'outing', hours: 4 }],
    ['outing 90min', { kind: 'outing', hours: 1.5 }],
    ['refuelled 40 l', { kind: 'refuelled', litres: 40 }],
    ['found "a gap of 0,2 mm"', { kind: 'finding', text: 'a gap of 0,2 mm' }],
    ['hours 1302 note 0,2', { kind: 'reading', meters: { engine: 1302 }, note: '0,2' }],
    ['hours 90 min', { kind: 'reading', meters: { engine: 1.5 } }],
    ['top-up engine-oil 400 mL', { kind: 'topped-up', dipstick: 'engine-oil', litres: 0.4 }],
    ['done change-oil used 6600 mL oil-15w40', { kind: 'done', tasks: ['change-oil'], used: { 'oil-15w40': 6.6 } }],
    ['read coolant -5, engine-oil 60 %', { kind: 'reading', readings: { coolant: -5, 'engine-oil': 0.6 } }],
    [
      'done change-oil, grease at 1304 used 6.6 L oil-15w40, 1 oil-filter took 40 min by Kim Moor note "hot, dusty" reads engine-oil full',
      {
        kind: 'done',
        tasks: ['change-oil', 'grease'],
        meters: { engine: 1304 },
        used: { 'oil-15w40': 6.6, 'oil-filter': 1 },
        minutes: 40,
        by: 'Kim Moor',
        note: 'hot, dusty',
        readings: { 'engine-oil': 'full' },
      },
    ],
    [
      'outing 3 h in 2 h dusty, tall-growth with mower from 08:00 to 11:00 at 1307',
      {
        kind: 'outing',
        hours: 3,
        duties: [{ duty: 'dusty', hours: 2 }, { duty: 'tall-growth' }],
        attachments: ['mower'],
        at: '08:00',
        until: '11:00',
        meters: { engine: 1307 },
      },
    ],
    ['outing 90 min', { kind: 'outing', hours: 1.5 }],
    ['found "a drop under the pump" task oil-level', { kind: 'finding', text: 'a drop under the pump', task: 'oil-level' }],
    ['defect seep drops form', { kind: 'defect-opened', defect: 'seep', class: 'drops-form' }],
    ['mended seep', { kind: 'defect-closed', defect: 'seep' }],
    ['top-up engine-oil 0.4 L', { kind: 'topped-up', dipstick: 'engine-oil', litres: 0.4 }],
    ['top-up oil-15w40 0.4', { kind: 'topped-up', supply: 'oil-15w40', litres: 0.4 }],
    ['event wheel-refit', { kind: 'event', event: 'wheel-refit' }],
    ['attach mower', { kind: 'attached', attachment: 'mower' }],
    ['refuelled 40', { kind: 'refuelled', litres: 40 }],
    ['storage begins', { kind: 'storage', phase: 'begins' }],
    ['replaced engine final 1302.4 initial 0', { kind: 'meter-replaced', meter: 'engine', final: 1302.4, initial: 0 }],
    ['states change-oil before 2025-01-01 at 1200', { kind: 'stated', task: 'change-oil', doneBy: '2025-01-01', doneAt: { engine: 1200 } }],
    ['machine "Tarn 55" serial 1234 since 2024-03-01', { kind: 'machine', model: 'Tarn 55', serial: 1234, inService: '2024-03-01' }],
    ['void abc note "read the wrong dial"', { kind: 'void', entry: 'abc', note: 'read the wrong dial' }],
  ])('%s', (text, draft) => {
    expect(said(text)).toEqual(draft);
  });

  it.each([
    ['sing', '`sing` is nothing that can be recorded. Say hours, read, done'],
    ['dnoe change-oil', 'Say it like `done`.'],
    ['engine 1302', 'Say `hours engine 1302`.'],
    ['coolant 92', 'Say `read coolant 92`.'],
    ['change-oil', 'Say `done change-oil`.'],
    ['changed the oil', 'Say it like `done TASK`.'],
    ['happened wheel-refit', 'Say it like `event NAME`.'],
    ['done change-oil --on 2026-05-10', '`--on` is said in words here: `on …`, without `--`.'],
    ['hours 1302 --force', '`--force` is no option of this.'],
    ['hours 1302,4', '`1302,4` has a comma: write `1302.4`, or a space after the comma between two values.'],
    ['top-up engine-oil 0,2', '`0,2` has a comma: write `0.2`'],
    ['done change-oil at 1302,4', '`1302,4` has a comma'],
    ['hours 4, 5', '`engine` stands twice: say one value of it.'],
    ['top-up engine-oil 0.2, coolant 1', 'is more than one top-up: record each by itself.'],
    ['refuelled 40 kg', 'is not an amount in litres: say it like `40 L`.'],
    ['hours many', '`many` is not a meter value'],
    ['hours 1302 km', '`engine` counts h, not km'],
    ['done a b', 'Put commas between tasks'],
    ['done change-oil used 6 kg oil-15w40', '`oil-15w40` is counted in L, not in kg'],
    ['done change-oil used 2 L oil-filter', '`oil-filter` is counted by the piece, not in L'],
    ['read coolant 92 kPa', 'is not a reading: say it like'],
    ['read engine-oil 3/0', 'is not a reading: say it like'],
    ['outing 2 h in tall growth', '`in tall growth` is not understood: did you mean `in tall-growth`?'],
    ['outing 2 h in deep mud', 'is not understood: say it like `in dusty`'],
    ['hours 1302 on 2026-02-30', 'is no day'],
    ['top-up engine-oil 0.4 kg', 'not an amount in litres'],
    ['outing 3 days', 'is not a time'],
  ])('%s: says what is not understood', (text, problem) => {
    expect(said(text)).toContain(problem);
  });

  it('takes a whole sentence in quotation marks for its words, with texts in marks of their own', () => {
    for (const example of RECORD_EXAMPLES)
      expect(parseRecordWords(tractor, [example]), example).toEqual(parseRecordWords(tractor, words(example)));
    expect(parseRecordWords(tractor, ['found "a drop, under the pump" task oil-level'])).toMatchObject({
      draft: { text: 'a drop, under the pump', task: 'oil-level' },
    });
  });

  it('reads every example that people are shown', () => {
    for (const example of RECORD_EXAMPLES) expect(parseRecordWords(tractor, words(example)).kind, example).toBe('said');
  });
});

describe('completing a draft', () => {
  const now = moment('2026-05-12 08:30');
  const entries: readonly Entry[] = [{ kind: 'reading', id: 'r1', on: '2026-05-10', meters: { engine: 1300 } }];
  const complete = (text: string): ReturnType<typeof completeDraft> => {
    const read = parseRecordWords(tractor, words(text));
    if (read.kind !== 'said') throw new Error(read.problem);
    return completeDraft({ graph: tractor, entries, now }, read.draft);
  };

  it('dates it now, or on the day given without a time', () => {
    expect(complete('hours 1301')).toMatchObject({ kind: 'ready', draft: { on: '2026-05-12', at: '08:30' } });
    const earlier = complete('hours 1301 on 2026-05-11');
    expect(earlier).toMatchObject({ kind: 'ready', draft: { on: '2026-05-11' } });
    expect(earlier.kind === 'ready' && 'at' in earlier.draft && earlier.draft.at !== undefined).toBe(false);
  });

  it.each([
    ['done', 'tasks'],
    ['hours', 'meters.engine'],
    ['found', 'text'],
    ['defect', 'defect'],
    ['event', 'event'],
    ['top-up engine-oil', 'litres'],
    ['replaced', 'meter'],
    ['replaced engine final 3', 'initial'],
    ['states', 'task'],
    ['void', 'entry'],
    ['attach', 'attachment'],
    ['storage', 'phase'],
  ])('%s: asks for %s', (text, slot) => {
    const recording = complete(text);
    expect(recording.kind === 'questions' && recording.questions[0]).toMatchObject({ slot, needed: true });
  });

  it('asks what the schedule will want to know, without insisting', () => {
    expect(complete('done oil-level')).toMatchObject({
      kind: 'ready',
      questions: [{ slot: 'readings.engine-oil', needed: false, wants: 'reading' }],
    });
    expect(complete('done change-oil')).toMatchObject({ kind: 'ready', questions: [{ slot: 'meters.engine', needed: false, unit: 'h' }] });
    expect(complete('done change-oil at 1304')).toMatchObject({ kind: 'ready', questions: [] });
    expect(complete('defect seep')).toMatchObject({
      kind: 'ready',
      questions: [{ slot: 'class', choices: [{ value: 'wetness' }, { value: 'drops-form' }] }],
    });
  });

  it.each([
    ['done chnage-oil', 'There is no task `chnage-oil` in this schedule; did you mean `change-oil`?'],
    ['hours 3 of engin', 'There is no meter `engin` in this schedule; did you mean `engine`?'],
    ['defect seep spraying', 'There is no class of `seep` named `spraying` in this schedule; it has `wetness` and `drops-form`'],
    ['outing 2 h with rake', 'There is no attachment `rake` in this schedule; it has `mower`'],
    ['event recall', '`recall` happens on 2026-03-02 by itself, to every machine; nobody notes it.'],
    ['void r9', 'There is no entry `r9` in this logbook.'],
    ['confirm 1', 'There is no entry `1`; did you mean `r1`?'],
    ['hours 1301 on 2026-05-13', '2026-05-13 is still to come'],
  ])('%s: refused, with the nearest that there is', (text, problem) => {
    const recording = complete(text);
    expect(recording.kind === 'refused' && recording.problems[0]).toContain(problem);
  });

  it('says nothing of the class of a defect that there is not', () => {
    const recording = complete('defect seap drops fall');
    expect(recording.kind === 'refused' && recording.problems).toEqual([
      'There is no defect `seap` in this schedule; did you mean `seep`?',
    ]);
  });

  it('says at once that a reading would be set aside', () => {
    expect(complete('hours 1030')).toMatchObject({
      kind: 'ready',
      remarks: [expect.stringContaining('1030 on `engine` is less than what was read before (entry `r1`)')],
    });
    expect(complete('hours 1400')).toMatchObject({ kind: 'ready', remarks: [expect.stringContaining('more than the time since allows')] });
    expect(complete('hours 1310')).toMatchObject({ kind: 'ready', remarks: [] });
  });

  it('says that the day of a statement is not the day of the work', () => {
    expect(complete('states change-oil at 1200 on 2026-03-12')).toMatchObject({
      kind: 'ready',
      remarks: [expect.stringContaining('say `before 2026-03-12`')],
    });
    expect(complete('states change-oil before 2026-03-12 on 2026-05-12')).toMatchObject({ kind: 'ready', remarks: [] });
    expect(complete('states change-oil at 1200')).toMatchObject({ kind: 'ready', remarks: [] });
  });

  it('says when a reading that fell is confirmed what that means, and what to do if the earlier one was the mistake', () => {
    const fell: Entry = { kind: 'reading', id: 'low', on: '2026-05-12', meters: { engine: 1030 } };
    const recording = completeDraft({ graph: tractor, entries: [...entries, fell], now }, { kind: 'confirm', entry: 'low' });
    expect(recording).toMatchObject({ kind: 'ready', remarks: [expect.stringMatching(/set back.*`void r1` instead/)] });
  });
});
