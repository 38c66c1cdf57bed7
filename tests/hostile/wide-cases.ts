/**
 * Files that keep to every limit and are as wide as they can be, and files for the other ways in and out.
 */
import type { HostileCase } from './hostile-cases.js';

const head = 'schedule t "T" language 1 edition 1 of 2026-01-01 by "B" fits model "M"\nmeter engine "Hour meter" counts h\n';
const gauge = 'gauge g "Gauge" reads °C\n';

function many(count: number, unit: (index: number) => string, joint = ''): string {
  return Array.from({ length: count }, (_, index) => unit(index)).join(joint);
}

function schedule(name: string, body: () => string, more: Partial<HostileCase> = {}): HostileCase {
  return { name, make: () => ({ files: { 'schedule.due': head + body() } }), ...more };
}

/** Pairs of `and` and `or`, one inside the other as deep as may be, each with some facts beside it. */
function tree(depth: number, beside: number): string {
  const facts = (at: number): string => many(beside, (i) => `g above ${at * beside + i} °C`, depth % 2 === 0 ? ' and ' : ' or ');
  return depth === 0 ? facts(0) : `${facts(depth)} ${depth % 2 === 0 ? 'and' : 'or'} (${tree(depth - 1, beside)})`;
}

const conditions: readonly HostileCase[] = [
  schedule('2,500 facts joined by `and`', () => `${gauge}task a "A" every 1 month\nwhen ${many(1_900, (i) => `g above ${i} °C`, ' and ')}`),
  schedule('a tree of conditions, 60 deep and 25 wide', () => `${gauge}task a "A" when ${tree(60, 25)}`),
  schedule(
    '1,000 `while` clauses in one task',
    () => `${gauge}task a "A" ${many(700, (i) => `while g above ${i} °C every ${i + 1} h of engine\n`)}`,
  ),
  schedule(
    '1,500 `unless` clauses in one task',
    () => `${gauge}task a "A" every 1 month ${many(1_500, (i) => `unless g above ${i} °C\n`)}`,
  ),
  schedule('1,500 `only if` clauses in one task', () => `${gauge}task a "A" every 1 month ${many(1_300, () => 'only if g above 1 °C\n')}`),
  schedule(
    'parts of plans 60 deep',
    () => `task a "A" every ${'('.repeat(60)}1 h of engine${many(60, (i) => ` or ${i + 2} months, whichever first)`)}`,
  ),
  schedule('2,000 limits of one task', () => `task a "A" ${many(1_500, (i) => `every ${i + 1} h of engine\n`)}`),
  schedule('1,500 stages', () => `task a "A" at ${many(1_500, (i) => `${i + 1} h`, ', ')} of engine after e\nevent e "E"`),
  schedule(
    '800 duties of one task',
    () =>
      `${many(800, (i) => `duty d${i} "D"\n`)}task a "A" every 1000 h of engine ${many(800, (i) => `in d${i} every ${i + 1} h of engine\n`)}`,
  ),
];

/** What one declaration can hold at most of each sort, just within its limit of 2,000 words. */
const fullDeclarations: readonly HostileCase[] = [
  schedule('full: a tree of conditions, 60 deep and 5 wide', () => `${gauge}task a "A" when ${tree(60, 5)}`),
  schedule(
    'full: 170 `while` clauses in one task',
    () => `${gauge}task a "A" ${many(170, (i) => `while g above ${i} °C every ${i + 1} h of engine\n`)}`,
  ),
  schedule(
    'full: 390 `unless` clauses in one task',
    () => `${gauge}task a "A" every 1 month ${many(390, (i) => `unless g above ${i} °C\n`)}`,
  ),
  schedule(
    'full: 320 `only if` clauses in one task',
    () => `${gauge}task a "A" every 1 month ${many(320, () => 'only if g above 1 °C\n')}`,
  ),
  schedule('full: 390 limits of one task', () => `task a "A" ${many(390, (i) => `every ${i + 1} h of engine\n`)}`),
  schedule(
    'full: 390 facts joined by `and`',
    () => `${gauge}task a "A" every 1 month\nwhen ${many(390, (i) => `g above ${i} °C`, ' and ')}`,
  ),
  schedule('full: 620 stages', () => `task a "A" at ${many(620, (i) => `${i + 1} h`, ', ')} of engine after e\nevent e "E"`),
  schedule(
    'full: 390 bands of one reading',
    () => `${gauge}task a "A" every 1 month reads g below 0 °C fine ${many(390, (i) => `${i} to ${i + 1} °C fine\n`)} above 390 °C fine`,
  ),
  schedule(
    'full: a reading that asks for 640 tasks',
    () =>
      `${gauge}${many(640, (i) => `task t${i} "T" every 1 month\n`)}task a "A" every 1 month reads g below 1 °C fine from 1 °C caution "C" ${many(640, (i) => `then t${i} now\n`)}`,
  ),
  schedule(
    'full: 4,300 supplies, 640 of them of one task',
    () => `${many(4_300, (i) => `supply s${i} "S" each\n`)}task a "A" every 1 month uses ${many(640, (i) => `1 s${i}`, ', ')}`,
  ),
  schedule(
    'full: a part with 900 positions, and 600 words that are none',
    () =>
      `position p ${many(900, (i) => `a${i}`, ', ')}\nat rest p a0\ntask a "A" every 1 month only if ${many(600, (i) => `p b${i}`, ' or ')}`,
    { says: 'DW' },
  ),
  schedule(
    'full: a defect with 390 classes',
    () =>
      `defect d "D" classes ${many(390, (i) => `c${i}`, ', ')}\n${many(390, (i) => `c${i} hold "H"\n`)}task a "A" every 1 month mends d`,
  ),
  schedule(
    'full: one example of 640 days',
    () => `task a "A" every 1 month\nexample "E"\n${many(640, (i) => `${day(i)} done a\n`)}${day(700)} expect a clear`,
    { door: 'prove' },
  ),
  {
    name: 'full: 390 limits in another order, compared',
    make: () => ({
      files: {
        'schedule.due': `${head}task a "A" ${many(390, (i) => `every ${i + 1} h of engine\n`)}`,
        'other.due': `${head}task a "A" ${many(390, (i) => `every ${390 - i} h of engine\n`)}`,
      },
    }),
    door: 'compare',
  },
];

const readings: readonly HostileCase[] = [
  schedule(
    '1,500 bands of one reading',
    () => `${gauge}task a "A" every 1 month reads g below 0 °C fine ${many(1_300, (i) => `${i} to ${i + 1} °C fine\n`)} above 1300 °C fine`,
  ),
  schedule(
    'a gauge with 1,500 bands, and 1,500 words that are none',
    () =>
      `gauge g "G" reads °C ${many(1_500, (i) => `b${i} ${i} to ${i + 1}\n`)}task a "A" when ${many(1_500, (i) => `g is c${i}`, ' or ')}`,
    { says: 'DW' },
  ),
  schedule(
    'a part with 3,000 positions, and 1,500 words that are none',
    () =>
      `position p ${many(3_000, (i) => `a${i}`, ', ')}\nat rest p a0\ntask a "A" every 1 month only if ${many(1_500, (i) => `p b${i}`, ' or ')}`,
    { says: 'DW' },
  ),
  schedule('2,000 units that are none', () => many(2_000, (i) => `task a${i} "A" every 5 h-${i} of engine\n`), { says: 'DW' }),
  schedule(
    '1,500 units that are none in one condition',
    () => `${gauge}task a "A" when ${many(1_500, (i) => `g above 5 gr-${i}`, ' or ')}`,
    {
      says: 'DW',
    },
  ),
  schedule(
    'a reading that asks for 1,500 tasks',
    () =>
      `${gauge}${many(1_500, (i) => `task t${i} "T" every 1 month\n`)}task a "A" every 1 month reads g below 1 °C fine from 1 °C caution "C" ${many(1_500, (i) => `then t${i} now\n`)}`,
  ),
  schedule(
    'a defect with 1,500 classes',
    () =>
      `defect d "D" classes ${many(1_500, (i) => `c${i}`, ', ')}\n${many(1_400, (i) => `c${i} hold "H"\n`)}task a "A" every 1 month mends d`,
  ),
];

const machines: readonly HostileCase[] = [
  schedule(
    '1,500 places, each a walk from the next',
    () =>
      `${many(1_500, (i) => `place p${i} "P"\n`)}${many(1_499, (i) => `walk p${i} to p${i + 1} 1 min\n`)}task a "A" every 1 month at p0\ntask b "B" every 1 month at p1499`,
  ),
  schedule(
    '4,900 supplies of one task',
    () => `${many(4_900, (i) => `supply s${i} "S" each\n`)}task a "A" every 1 month uses ${many(2_600, (i) => `1 s${i}`, ', ')}`,
  ),
  schedule('4,900 hazards', () => `${many(4_900, (i) => `hazard h${i} "H" warning "W"\n`)}task a "A" every 1 month`, { says: 'DW' }),
  schedule(
    '4,900 meters of one unit and a span without `of`',
    () => `${many(4_900, (i) => `meter m${i} "M" counts h\n`)}task a "A" every 5 h`,
    {
      says: 'DW',
    },
  ),
  schedule('2,000 stops', () => `${gauge}${many(2_000, (i) => `stop s${i} "S" when g above ${i} °C\n`)}task a "A" every 1 month`),
  {
    name: 'a variant that changes each of 2,400 tasks, and as many that are not there',
    make: () => ({
      files: {
        'schedule.due': `variant v "V" language 1 edition 1 of 2026-01-01 by "B" fits model "N" varies "base"\n${many(2_400, (i) => `change task t${i} every 2 months\n`)}${many(2_400, (i) => `change task u${i} every 2 months\n`)}`,
        'base.due': `${head}${many(2_400, (i) => `task t${i} "T" every 1 month\n`)}`,
      },
    }),
    says: 'DW',
  },
];

const day = (index: number): string => new Date(Date.UTC(2000, 0, 1) + index * 86_400_000).toISOString().slice(0, 10);
const everyTask = `${head}${gauge}dipstick oil "O" low to full is 1 L\nduty dusty "D"\nevent refit "R"\ndefect leak "L" classes wet, drops
task service "S" every 100 h of engine or 12 months, whichever first in dusty every 50 h of engine count from due if late
task level "L" before each day's work reads oil below low hold "H" from low fine sooner at half the time that oil takes to fall to low
task dust "D" every 30 min of work in dusty when g climbs 6 °C within 20 min
task marks "M" every multiple of 250 h of engine
task yearly "Y" every year on 29 February
task nuts "N" at 1 h, 10 h of engine after refit
task mend "M" mends leak while leak is open every 4 h of engine`;

/** One entry of each sort, over and over. */
function lifeOf(lines: number): string {
  const kinds: readonly ((i: number) => string)[] = [
    (i) => `"kind":"reading","meters":{"engine":${i}},"readings":{"oil":${(i % 10) / 10},"g":${i % 90}}`,
    (i) => `"kind":"done","tasks":["service","level","marks"],"meters":{"engine":${i}}`,
    () => `"kind":"outing","at":"08:00","until":"10:00","duties":[{"duty":"dusty"}]`,
    () => `"kind":"event","event":"refit"`,
    (i) => (i % 2 === 0 ? `"kind":"defect-opened","defect":"leak","class":"wet"` : `"kind":"defect-closed","defect":"leak"`),
    () => `"kind":"topped-up","dipstick":"oil","litres":0.5`,
    (i) => `"kind":"confirm","entry":"e${i - 6}"`,
    (i) => `"kind":"void","entry":"e${i - 20}"`,
  ];
  return many(lines, (i) => `{"id":"e${i}","on":"${day(i / 8)}",${(kinds[i % 8] ?? kinds[0])?.(i) ?? ''}}`, '\n');
}

const histories: readonly HostileCase[] = [
  { name: 'eight years of every sort of entry', make: () => ({ files: { 'schedule.due': everyTask }, logbook: lifeOf(3_000) }) },
  {
    name: 'a logbook of 20,000 lines',
    make: () => ({ files: { 'schedule.due': everyTask }, logbook: lifeOf(20_000) }),
    asked: 'state',
    says: 'unreadable',
  },
  {
    name: '1,000 tasks that each come after 100 times of what happened 4,000 times',
    make: () => ({
      files: { 'schedule.due': `${head}event knock "K"\n${many(1_000, (i) => `task t${i} "T" after 100 times knock\n`)}` },
      logbook: many(4_000, (i) => `{"id":"k${i}","on":"20${10 + (i % 16)}-01-0${1 + (i % 9)}","kind":"event","event":"knock"}`, '\n'),
    }),
  },
  {
    name: 'full: a logbook of 10,000 lines',
    make: () => ({ files: { 'schedule.due': everyTask }, logbook: lifeOf(10_000) }),
    asked: 'state',
  },
  {
    name: 'a logbook of 16 MB of long notes',
    make: () => ({
      files: { 'schedule.due': everyTask },
      logbook: many(270, (i) => `{"id":"n${i}","on":"2026-01-01","kind":"finding","text":"${'n'.repeat(60_000)}"}`, '\n'),
    }),
  },
  {
    name: '3,000 outings with ten duties each, all on one day',
    make: () => ({
      files: { 'schedule.due': everyTask },
      logbook: many(
        3_000,
        (i) =>
          `{"id":"o${i}","on":"2026-05-01","at":"08:00","until":"09:00","kind":"outing","duties":[${many(10, () => '{"duty":"dusty","hours":1}', ',')}]}`,
        '\n',
      ),
    }),
  },
  {
    name: 'given out: the record of 20,000 voids of voids',
    make: () => ({
      files: { 'schedule.due': everyTask },
      logbook: many(20_000, (i) => `{"id":"v${i}","on":"2026-05-01","kind":"void","entry":"v${i + 1}"}`, '\n'),
    }),
    door: 'out',
  },
  {
    name: 'given out: tables, the record and a calendar of 600 entries',
    make: () => ({ files: { 'schedule.due': everyTask }, logbook: lifeOf(600) }),
    door: 'out',
  },
];

const doors: readonly HostileCase[] = [
  schedule('laid out: 4,900 tasks', () => many(4_900, (i) => `task t${i} "T" every 1 month\n`), { door: 'format' }),
  schedule('laid out: one clause of 7,900 words', () => `task a "A" covers ${many(3_900, (i) => `b${i}`, ', ')}`, { door: 'format' }),
  schedule('laid out: 256 KiB of comments', () => many(60_000, () => '# c\n'), { door: 'format' }),
  schedule('laid out: 64 KiB of one word', () => `task ${'a-'.repeat(30_000)}a "${'T'.repeat(60_000)}" every 1 month`, { door: 'format' }),
  schedule(
    'edited: 2,000 tasks that each cover a name nearly their own',
    () => many(2_000, (i) => `task task-${i} "T" every 1 month covers taks-${i}\n`),
    { door: 'editor', says: 'DW220' },
  ),
  schedule('edited: 256 KiB of unknown words', () => many(40_000, (i) => `w${i.toString(36)} `), { door: 'editor' }),
  schedule(
    'proven: 1,000 examples',
    () =>
      `task a "A" every 1 month\n${many(1_000, (i) => `example "${i}" 2026-01-01 done a 2026-01-15 expect a clear 2026-02-01 expect a due\n`)}`,
    { door: 'prove' },
  ),
  schedule(
    'proven: one example of 1,000 days',
    () => `task a "A" every 1 month\nexample "E"\n${many(1_000, (i) => `${day(i)} done a\n`)}${day(1_001)} expect a clear`,
    { door: 'prove' },
  ),
  schedule(
    'proven: an example for the end of time',
    () => 'task a "A" every 1 month\nexample "E" 0001-01-01 done a 9999-12-31 expect a overdue',
    { door: 'prove' },
  ),
  {
    name: 'compared: two editions of 2,000 tasks that share nothing',
    make: () => ({
      files: {
        'schedule.due': head + many(2_000, (i) => `task t${i} "T" every ${i + 1} months\n`),
        'other.due': head + many(2_000, (i) => `task u${i} "T" every ${i + 1} months\n`),
      },
    }),
    door: 'compare',
  },
  {
    name: 'compared: 700 limits in another order',
    make: () => ({
      files: {
        'schedule.due': `${head}task a "A" ${many(700, (i) => `every ${i + 1} h of engine\n`)}`,
        'other.due': `${head}task a "A" ${many(700, (i) => `every ${700 - i} h of engine\n`)}`,
      },
    }),
    door: 'compare',
  },
  table('in: a table of 20,000 rows', () => `on,kind,meters.engine\n${many(20_000, (i) => `2026-01-01,reading,${i}`, '\n')}`),
  table('in: a table with 20,000 columns', () => `${many(20_000, (i) => `meters.m${i}`, ',')}\n${many(20_000, () => '1', ',')}`),
  table(
    'in: a table of formulas and numbers beyond all bounds',
    () => 'on,kind,meters.engine,note\n2026-01-01,reading,1e999,=cmd|x\n2026-01-01,reading,-1,+1\n2026-01-01,reading,NaN,@a\n',
  ),
  table('in: a table with a quoted cell that never ends', () => `on,kind,note\n2026-01-01,reading,"${'a,'.repeat(200_000)}`),
  table('in: a table named `__proto__`', () => 'on,kind,__proto__,meters.__proto__,meters.constructor\n2026-01-01,reading,1,2,3\n'),
  feed(
    'in: XML whose entities would grow',
    'xml',
    () => `<!DOCTYPE a [<!ENTITY b "${'x'.repeat(1_000)}"><!ENTITY c "${'&b;'.repeat(1_000)}">]><a>${'&c;'.repeat(1_000)}</a>`,
    'document type',
  ),
  feed('in: XML that would fetch a file', 'xml', () => '<!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/passwd">]><a>&b;</a>', 'document type'),
  feed('in: XML 200,000 deep', 'xml', () => '<a>'.repeat(200_000), 'nested'),
  feed('in: XML with 100,000 attributes', 'xml', () => `<Fleet ${many(100_000, (i) => `a${i}="1"`, ' ')}/>`),
  feed(
    'in: XML with 50,000 machines',
    'xml',
    () =>
      `<Fleet>${many(50_000, (i) => `<Equipment><EquipmentHeader><SerialNumber>${i}</SerialNumber></EquipmentHeader></Equipment>`)}</Fleet>`,
  ),
  feed('in: XML that names `__proto__`', 'xml', () => '<Fleet><__proto__><polluted>1</polluted></__proto__></Fleet>'),
  feed('in: JSON 200,000 deep', 'json', () => '['.repeat(200_000)),
  feed(
    'in: JSON of hours beyond all bounds',
    'json',
    () => '{"Fleet":{"Equipment":[{"CumulativeOperatingHours":{"Hour":1e999,"Datetime":"999999-01-01T00:00:00Z"}}]}}',
  ),
];

function table(name: string, text: () => string): HostileCase {
  return { name, make: () => ({ files: { 'schedule.due': text() } }), door: 'csv' };
}

function feed(name: string, door: 'xml' | 'json', text: () => string, says?: string): HostileCase {
  return { name, make: () => ({ files: { 'schedule.due': text() } }), door, ...(says === undefined ? {} : { says }) };
}

/** Every wide file, and every file for another door. */
export const wideCases: readonly HostileCase[] = [...conditions, ...fullDeclarations, ...readings, ...machines, ...histories, ...doors];
