/**
 * A recursive-descent parser written by hand for the same language, as the measure for the real one: it makes the same
 * tree from a right text, and knows nothing of recovery, near names or help. It throws at the first mistake.
 *
 * It is a yardstick of speed only; tests/bench/parse.bench.ts checks that its trees are the same.
 */
import { unitSpellings } from '../../src/values/units.js';
import { declarationWords, reservedWords } from '../../src/syntax/words.js';
import { MONTH_NAMES } from '../../src/values/calendar.js';

type Kind = 'name' | 'word' | 'text' | 'number' | 'date' | 'time' | 'sign' | 'month' | 'punctuation' | 'end';

interface Token {
  readonly kind: Kind;
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

const PATTERN =
  /[ \t\r\n]+|(#[^\r\n]*)|("(?:[^"\\\r\n]|\\.)*")|(\d{4}-\d\d-\d\d)|(\d\d:\d\d)|(-?\d+(?:\.\d+)?)|(day's)|(°C|°F|N·m|lbf·ft|lbf·in|kgf·m|N-m|kPa|MPa|mL|mV|m³|m²|L|V|K)(?![A-Za-z])|([a-z][a-z0-9]*(?:[-.][a-z0-9]+)*)|([A-Z][a-z]+)|([(),%])/y;
const units = new Set(unitSpellings());
const declared = new Set<string>(declarationWords);

/* eslint-disable @typescript-eslint/no-explicit-any -- a yardstick, not a model */
type Node = Record<string, unknown>;

/** Parses a right text; throws on any other. */
export function parseByHand(text: string, file = 0): Node {
  const tokens: Token[] = [];
  const comments: Node[] = [];
  PATTERN.lastIndex = 0;
  while (PATTERN.lastIndex < text.length) {
    const start = PATTERN.lastIndex;
    const m = PATTERN.exec(text);
    if (m === null) throw new Error(`character at ${start}`);
    const end = PATTERN.lastIndex;
    if (m[1] !== undefined) comments.push({ kind: 'comment', at: { file, start, end }, text: m[1] });
    else if (m[2] !== undefined) tokens.push({ kind: 'text', text: m[2], start, end });
    else if (m[3] !== undefined) tokens.push({ kind: 'date', text: m[3], start, end });
    else if (m[4] !== undefined) tokens.push({ kind: 'time', text: m[4], start, end });
    else if (m[5] !== undefined) tokens.push({ kind: 'number', text: m[5], start, end });
    else if (m[6] !== undefined) tokens.push({ kind: 'word', text: m[6], start, end });
    else if (m[7] !== undefined) tokens.push({ kind: 'sign', text: m[7], start, end });
    else if (m[8] !== undefined) tokens.push({ kind: reservedWords.has(m[8]) ? 'word' : 'name', text: m[8], start, end });
    else if (m[9] !== undefined) tokens.push({ kind: 'month', text: m[9], start, end });
    else if (m[10] !== undefined) tokens.push({ kind: 'punctuation', text: m[10], start, end });
  }
  const over: Token = { kind: 'end', text: '', start: text.length, end: text.length };
  let i = 0;
  let loose = true;
  const la = (n = 0): Token => tokens[i + n] ?? over;
  const is = (t: string, n = 0): boolean => la(n).text === t && la(n).kind !== 'text';
  const kind = (k: Kind, n = 0): boolean => la(n).kind === k;
  const fail = (what: string): never => {
    throw new Error(`expected ${what} at ${la().start}, not ${la().text}`);
  };
  const eat = (t: string): Token => (is(t) ? next() : fail(t));
  const next = (): Token => {
    const t = la();
    i += 1;
    return t;
  };
  const take = (k: Kind): Token => (kind(k) ? next() : fail(k));
  const spot = (t: Token) => ({ file, start: t.start, end: t.end });
  const since = (t: Token) => ({ file, start: t.start, end: (tokens[i - 1] ?? over).end });
  const name = (): Node => leaf('name', take('name'));
  const leaf = (k: string, t: Token): Node => ({ kind: k, at: spot(t), text: t.text });
  const str = (): Node => {
    const t = take('text');
    return { kind: 'text', at: spot(t), text: t.text.slice(1, -1).replace(/\\(["\\])/g, '$1') };
  };
  const num = (): Node => {
    const t = take('number');
    return { kind: 'number', at: spot(t), text: t.text, value: Number(t.text) };
  };
  const unit = (): Node => (kind('name') || kind('sign') || is('%') ? leaf('unit', next()) : fail('unit'));
  const list = <T>(read: () => T): T[] => {
    const all = [read()];
    while (is(',')) {
      next();
      all.push(read());
    }
    return all;
  };
  const maybe = (key: string, value: Node | undefined): Node => (value === undefined ? {} : { [key]: value });
  const quantity = (): Node => {
    const t = la();
    const number = num();
    const u = unit();
    return { kind: 'quantity', at: since(t), number, unit: u };
  };
  const percent = (): Node => {
    const t = la();
    const number = num();
    eat('%');
    return { kind: 'percent', at: since(t), number };
  };
  const span = (): Node => {
    const t = la();
    const number = num();
    let u: Node;
    if (is('calendar') && (is('months', 1) || is('month', 1))) {
      const [a, b] = [next(), next()];
      u = { kind: 'unit', at: { file, start: a.start, end: b.end }, text: `${a.text} ${b.text}` };
    } else u = unit();
    if (!is('of')) return { kind: 'span', at: since(t), number, unit: u };
    next();
    if (!is('work')) return ((n: Node) => ({ kind: 'span', at: since(t), number, unit: u, of: { kind: 'meter', name: n } }))(name());
    const w = next();
    let duty: Node | undefined;
    if (is('in') && !is('every', 2)) {
      next();
      duty = name();
    }
    const of = { kind: 'work', at: since(w), ...maybe('duty', duty) };
    return { kind: 'span', at: since(t), number, unit: u, of };
  };
  const levelUnit = (): boolean => {
    if (kind('sign') || is('%')) return true;
    if (!kind('name')) return false;
    return units.has(la().text)
      ? loose || !(kind('number', 1) || is('above', 1) || is('below', 1) || is('from', 1) || is('reads', 1))
      : loose;
  };
  const level = (): Node => {
    if (kind('name')) return name();
    const t = la();
    const number = num();
    if (!levelUnit()) return number;
    const u = unit();
    return { kind: 'quantity', at: since(t), number, unit: u };
  };
  const month = (): Node => {
    const t = take('month');
    return { kind: 'month', at: spot(t), month: (MONTH_NAMES as readonly string[]).indexOf(t.text) + 1 };
  };
  const markDay = (): Node => {
    const t = la();
    if (is('day')) {
      next();
      const day = num();
      return { kind: 'mark-day', at: since(t), day };
    }
    const day = num();
    const m = month();
    return { kind: 'mark-day', at: since(t), day, month: m };
  };
  const calendarAt = (n: number): boolean => is('month', n) || is('months', n) || is('year', n) || is('years', n);
  const limit = (): Node => {
    const t = la();
    if (is('multiple')) {
      next();
      eat('of');
      const s = span();
      return { kind: 'multiple', at: since(t), span: s };
    }
    if (is('look')) {
      next();
      eat('in');
      const s = span();
      for (const w of ['from', 'sign', 'to', 'failure', 'finding']) eat(w);
      const finding = percent();
      eat('missing');
      const missing = percent();
      return { kind: 'look', at: since(t), span: s, finding, missing };
    }
    const at = kind('number') ? 1 : 0;
    if (calendarAt(at) && is('on', at + 1) && (kind('number', at + 2) || (is('day', at + 2) && kind('number', at + 3)))) {
      const number = at === 1 ? num() : undefined;
      const u = unit();
      eat('on');
      const days = [markDay()];
      while (is(',') && !is('whichever', 1)) {
        next();
        days.push(markDay());
      }
      let whereItExists = false;
      if (is('where')) {
        for (const w of ['where', 'it', 'exists']) eat(w);
        whereItExists = true;
      }
      return { kind: 'calendar-marks', at: since(t), ...maybe('number', number), unit: u, days, whereItExists };
    }
    if (calendarAt(at) && is('in', at + 1) && kind('month', at + 2)) {
      const number = at === 1 ? num() : undefined;
      const u = unit();
      eat('in');
      const m = month();
      return { kind: 'calendar-window', at: since(t), ...maybe('number', number), unit: u, month: m };
    }
    const strict = is('more');
    if (strict) {
      next();
      eat('than');
    }
    const s = span();
    return { kind: 'interval', at: since(t), span: s, strict };
  };
  const planTerm = (): Node => {
    if (!is('(')) return limit();
    next();
    const p = plan();
    eat(')');
    return p;
  };
  const plan = (): Node => {
    const t = la();
    const parts = [planTerm()];
    while (is('or')) {
      next();
      parts.push(planTerm());
    }
    if (parts.length === 1) return parts[0] ?? fail('plan');
    if (is(',')) next();
    eat('whichever');
    const mode = is('first') ? eat('first').text : eat('last').text;
    return { kind: 'whichever', at: since(t), mode, parts };
  };
  const condition = (): Node => {
    const t = la();
    const parts = [allOf()];
    while (is('or')) {
      next();
      parts.push(allOf());
    }
    return parts.length === 1 ? (parts[0] ?? fail('condition')) : { kind: 'or', at: since(t), parts };
  };
  const allOf = (): Node => {
    const t = la();
    const parts = [factor()];
    while (is('and') || is(',')) {
      next();
      parts.push(factor());
    }
    return parts.length === 1 ? (parts[0] ?? fail('condition')) : { kind: 'and', at: since(t), parts };
  };
  const factor = (): Node => {
    const t = la();
    if (is('not')) {
      next();
      const part = factor();
      return { kind: 'not', at: since(t), part };
    }
    if (!is('(')) return fact();
    next();
    const c = condition();
    eat(')');
    return c;
  };
  const word = (): Node => (is('on') ? leaf('name', next()) : name());
  const fact = (): Node => {
    const t = la();
    if (is('in')) {
      next();
      const duty = name();
      return { kind: 'in', at: since(t), duty };
    }
    if (is('machine') && ((is('older', 1) && is('than', 2)) || (is('idle', 1) && is('for', 2)))) {
      next();
      const what = next().text;
      next();
      const s = span();
      return { kind: 'machine', at: since(t), what, span: s };
    }
    if (is('date') && is('from', 1) && kind('number', 2) && kind('month', 3)) {
      next();
      next();
      const from = markDay();
      eat('to');
      const to = markDay();
      return { kind: 'season', at: since(t), from, to };
    }
    const subject = name();
    if (is('above') || is('below') || is('at')) {
      let op = next().text;
      if (op === 'at') op = is('least') ? (next(), 'at-least') : (eat('most'), 'at-most');
      const l = level();
      return { kind: 'compare', at: since(t), subject, op, level: l };
    }
    if (is('from')) {
      next();
      const from = level();
      eat('to');
      const to = level();
      return { kind: 'between', at: since(t), subject, from, to };
    }
    if ((is('climbs') || is('falls')) && kind('number', 1)) {
      const direction = next().text;
      const by = quantity();
      eat('within');
      const within = span();
      return { kind: 'trend', at: since(t), subject, direction, by, within };
    }
    if ((is('read') || is('done') || is('happened')) && is('within', 1)) {
      const what = next().text;
      next();
      const within = span();
      return { kind: 'recent', at: since(t), subject, what, within };
    }
    if (is('worse') && is('than', 1)) {
      next();
      next();
      const than = name();
      return { kind: 'worse', at: since(t), defect: subject, than };
    }
    if (is('is')) next();
    const w = word();
    return { kind: 'is', at: since(t), subject, word: w };
  };
  const round = (): string => {
    eat('each');
    if (!is("day's")) return next().text;
    next();
    eat('work');
    return 'day';
  };
  const occasionWhat = (): Node => {
    const w = next().text;
    if (w === 'before') return is('storage') ? (next(), { when: 'before', of: 'storage' }) : { when: 'before', of: round() };
    if (w === 'after') {
      if (is('each')) return { when: 'after', of: round() };
      const what = next().text;
      return what === 'attaching' ? { when: 'after-attaching', attachment: name() } : { when: 'after', of: what };
    }
    if (w === 'on') return is('refuelling') ? (next(), { when: 'refuelling' }) : { when: 'event', event: name() };
    const within = span();
    eat('after');
    return { when: 'event', event: name(), within };
  };
  const margin = (): Node => {
    const t = la();
    if (is('lesser')) {
      next();
      eat('of');
      const first = margin();
      eat('and');
      const second = margin();
      return { kind: 'lesser', at: since(t), first, second };
    }
    return is('%', 1) && !is('of', 2) ? percent() : span();
  };
  const range = (t: Token, from: Node | undefined, fromIncluded: boolean, to: Node | undefined, toIncluded: boolean): Node => ({
    kind: 'range', at: since(t), ...maybe('from', from), fromIncluded, ...maybe('to', to), toIncluded,
  }); // prettier-ignore
  const band = (): Node => {
    const t = la();
    if (is('below')) return (next(), ((l) => range(t, undefined, false, l, false))(level()));
    if (is('up') && is('to', 1)) return (next(), next(), ((l) => range(t, undefined, false, l, true))(level()));
    if (is('from')) return (next(), ((l) => range(t, l, true, undefined, false))(level()));
    if (is('above')) {
      next();
      const from = level();
      if (!is('to')) return range(t, from, false, undefined, false);
      next();
      const to = level();
      return range(t, from, false, to, true);
    }
    const from = level();
    if (!is('to')) return from['kind'] === 'name' ? { kind: 'band-name', at: from['at'], name: from } : range(t, from, true, from, true);
    next();
    const included = !is('below');
    if (!included) next();
    const to = level();
    return range(t, from, true, to, included);
  };
  const outcome = (): Node => {
    const t = la();
    const verdict = next().text;
    const said = verdict === 'fine' ? undefined : str();
    const then: Node[] = [];
    while (is('then')) {
      const a = next();
      const task = name();
      let within: Node | undefined;
      if (is('now')) next();
      else {
        eat('within');
        within = span();
      }
      then.push({ at: since(a), task, ...maybe('within', within) });
    }
    return { kind: 'outcome', at: since(t), verdict, ...maybe('text', said), then };
  };
  const clause = (): Node | undefined => {
    const t = la();
    const done = (k: string, rest: Node): Node => ({ kind: k, at: since(t), ...rest });
    switch (t.text) {
      case 'every': return (next(), ((p) => done('every', { plan: p }))(plan())); // prettier-ignore
      case 'first': {
        next();
        eat('at');
        const save = i;
        const s = span();
        if (is(',') && kind('number', 1)) {
          next();
          const spans = [s, ...list(span)];
          return done('first', { what: { kind: 'stages', spans } });
        }
        i = save;
        const p = plan();
        return done('first', { what: { kind: 'plan', plan: p } });
      }
      case 'at': {
        next();
        if (!kind('number')) return ((place) => done('place-at', { place }))(name());
        const spans = list(span);
        eat('after');
        const event = name();
        return done('series', { spans, event });
      }
      case 'in': {
        next();
        const duty = name();
        eat('every');
        const s = span();
        return done('in-duty', { duty, span: s });
      }
      case 'while': {
        next();
        const c = condition();
        if (!is('every')) return done('while-stance', { condition: c });
        next();
        const p = plan();
        return done('while-every', { condition: c, plan: p });
      }
      case 'when': return (next(), ((c) => done('when', { condition: c }))(condition())); // prettier-ignore
      case 'with': return (next(), ((c) => done('with', { condition: c }))(condition())); // prettier-ignore
      case 'before':
      case 'after':
      case 'on':
      case 'within': return ((what) => done('occasion', { what }))(occasionWhat()); // prettier-ignore
      case 'sooner': {
        next();
        eat('at');
        let share = 0.5;
        if (is('half')) next();
        else if (is('a')) {
          next();
          share = next().text === 'third' ? 1 / 3 : 1 / 4;
        } else {
          share = (percent()['number'] as { value: number }).value / 100;
          eat('of');
        }
        for (const w of ['the', 'time', 'that']) eat(w);
        const dipstick = name();
        for (const w of ['takes', 'to', 'fall', 'to', 'low']) eat(w);
        return done('sooner', { share, dipstick });
      }
      case 'only': return (next(), eat('if'), ((c) => done('only-if', { condition: c }))(condition())); // prettier-ignore
      case 'unless': return (next(), ((c) => done('unless', { condition: c }))(condition())); // prettier-ignore
      case 'for': return (next(), ((r) => done('for-serial', { range: r }))(serial())); // prettier-ignore
      case 'count': {
        next();
        eat('from');
        if (is('doing')) return (next(), done('count', { from: 'doing' }));
        eat('due');
        if (is('if')) return (next(), eat('late'), done('count', { from: 'due-if-late' }));
        for (const w of ['within', 'the', 'allowance']) eat(w);
        return done('count', { from: 'due-within-allowance' });
      }
      case 'allow': {
        next();
        const sides = list(() => ((m: Node) => ({ margin: m, side: next().text }))(margin()));
        return done('allow', { sides });
      }
      case 'lead': return (next(), ((margins) => done('lead', { margins }))(list(margin))); // prettier-ignore
      case 'hold': {
        next();
        let m: Node | undefined;
        if (is('when')) {
          next();
          eat('overdue');
        } else {
          m = margin();
          eat('late');
        }
        const said = str();
        return done('hold', { ...maybe('margin', m), text: said });
      }
      case 'takes': return (next(), ((q) => done('takes', { time: q }))(quantity())); // prettier-ignore
      case 'under': {
        next();
        const part = name();
        const meant = is('meant') ? (next(), str()) : undefined;
        return done('under', { part, ...maybe('meant', meant) });
      }
      case 'reads': {
        next();
        const instrument = name();
        const bands: Node[] = [];
        while (is('below') || is('above') || is('from') || kind('number') || kind('name')) {
          const b = la();
          const bandNode = band();
          const o = outcome();
          bands.push({ kind: 'band-rule', at: since(b), band: bandNode, outcome: o });
        }
        return done('reads', { instrument, bands });
      }
      case 'uses': {
        next();
        const items = list(() => {
          const a = la();
          const number = num();
          const u = kind('sign') || is('%') || kind('name', 1) ? unit() : undefined;
          const supply = name();
          return { at: since(a), number, ...maybe('unit', u), supply };
        });
        return done('uses', { items });
      }
      case 'needs': return (next(), ((tools) => done('needs', { tools }))(list(str))); // prettier-ignore
      case 'tighten': {
        next();
        const what = kind('text') ? str() : name();
        eat('to');
        const torque = quantity();
        return done('tighten', { what, torque });
      }
      case 'do':
      case 'reason':
      case 'source': return (next(), ((x) => done(t.text, { text: x }))(str())); // prettier-ignore
      case 'danger':
      case 'warning':
      case 'caution':
      case 'notice': return (next(), ((x) => done('signal', { signal: t.text, text: x }))(str())); // prettier-ignore
      case 'beware': return (next(), ((hazards) => done('beware', { hazards }))(list(name))); // prettier-ignore
      case 'calls': {
        for (const w of ['calls', 'for', 'qualified', 'mechanic']) eat(w);
        return done('qualified', {});
      }
      case 'covers':
      case 'restarts':
      case 'follows':
      case 'mends': return (next(), ((names) => done(t.text, { names }))(list(name))); // prettier-ignore
      case 'met': return (next(), eat('by'), ((names) => done('met-by', { names }))(list(name))); // prettier-ignore
      case 'back': return (next(), ((title) => done('back', { title }))(str())); // prettier-ignore
      case 'one': return (next(), eat('way'), done('one-way', {})); // prettier-ignore
      default: return undefined; // prettier-ignore
    }
  };
  const serial = (): Node => {
    const t = eat('serial');
    const from = num();
    eat('to');
    const to = num();
    return { kind: 'serial-range', at: since(t), from, to };
  };
  const stanceItem = (): Node => {
    const t = la();
    const part = name();
    if (is('is')) next();
    const position = word();
    return { kind: 'stance-item', at: since(t), part, position };
  };
  const atRest = (): boolean =>
    is('at') &&
    (is('rest', 1) || is('work', 1)) &&
    kind('name', 2) &&
    (is('is', 3) || is('on', 3) || kind('name', 3)) &&
    !(is('one', 2) && is('way', 3));
  const opensDeclaration = (): boolean => (kind('word') && declared.has(la().text)) || atRest();
  const clauses = (): Node[] => {
    const all: Node[] = [];
    while (!kind('end') && !opensDeclaration()) all.push(clause() ?? fail('clause'));
    return all;
  };
  const declaration = (): Node => {
    const t = la();
    const done = (k: string, rest: Node): Node => ({ kind: k, at: since(t), ...rest });
    next();
    if (t.text === 'at') {
      const which = next().text;
      const items = list(stanceItem);
      return done('rest', { which, items });
    }
    if (t.text === 'never') {
      const title = str();
      const c = condition();
      return done('never', { title, condition: c });
    }
    if (t.text === 'example') return example(t);
    if (t.text === 'change' || t.text === 'remove') {
      eat('task');
      const n = name();
      if (t.text === 'remove') return done('remove', { name: n });
      const title = kind('text') ? str() : undefined;
      const all = clauses();
      return done('change', { name: n, ...maybe('title', title), clauses: all });
    }
    const n = name();
    if (t.text === 'walk') {
      eat('to');
      const to = name();
      const time = quantity();
      return done('walk', { from: n, to, time });
    }
    if (t.text === 'hazard') {
      const signal = next().text;
      const said = str();
      return done('hazard', { name: n, signal, text: said });
    }
    if (t.text === 'position') {
      const title = kind('text') ? str() : undefined;
      const positions = list(() => ((w: Node) => ({ name: w, aloft: is('aloft') ? (next(), true) : false }))(word()));
      return done('position', { name: n, ...maybe('title', title), positions });
    }
    const title = str();
    switch (t.text) {
      case 'duty':
      case 'event': return done(t.text, { name: n, title }); // prettier-ignore
      case 'task': return ((all) => done('task', { name: n, title, clauses: all }))(clauses()); // prettier-ignore
      case 'meter': {
        eat('counts');
        const u = unit();
        const fromOutings = is('from');
        if (fromOutings) {
          next();
          eat('outings');
        }
        return done('meter', { name: n, title, unit: u, fromOutings });
      }
      case 'gauge': {
        eat('reads');
        const u = unit();
        const fresh = is('fresh') && is('for', 1) ? (next(), next(), span()) : undefined;
        loose = false;
        const bands: Node[] = [];
        while (kind('name')) {
          const b = la();
          const bn = name();
          const x = band();
          bands.push({ kind: 'named-band', at: since(b), name: bn, band: x });
        }
        loose = true;
        return done('gauge', { name: n, title, unit: u, ...maybe('fresh', fresh), bands });
      }
      case 'dipstick': {
        for (const w of ['low', 'to', 'full', 'is']) eat(w);
        const q = quantity();
        const fresh = is('fresh') ? (next(), eat('for'), span()) : undefined;
        return done('dipstick', { name: n, title, range: q, ...maybe('fresh', fresh) });
      }
      case 'attachment': return ((f) => done('attachment', { name: n, title, ...maybe('follows', f) }))(is('follows') ? (next(), str()) : undefined); // prettier-ignore
      case 'supply': {
        const u = is('in') ? (next(), unit()) : (eat('each'), undefined);
        const known = is('known') ? (next(), eat('as'), str()) : undefined;
        return done('supply', { name: n, title, ...maybe('unit', u), ...maybe('knownAs', known) });
      }
      case 'place': return ((u) => done('place', { name: n, title, ...maybe('under', u) }))(is('under') ? (next(), name()) : undefined); // prettier-ignore
      case 'stop': return (eat('when'), ((c) => done('stop', { name: n, title, condition: c }))(condition())); // prettier-ignore
      case 'step': {
        const part = name();
        const from = word();
        eat('to');
        const to = word();
        const all = clauses();
        return done('step', { name: n, title, part, from, to, clauses: all });
      }
      case 'defect': {
        const classes = is('classes')
          ? (next(), list(() => ((c: Node) => (kind('text') ? { name: c, title: str() } : { name: c }))(name())))
          : [];
        const rules: Node[] = [];
        while (kind('name')) {
          const b = la();
          const rn = name();
          const o = outcome();
          rules.push({ kind: 'class-rule', at: since(b), name: rn, outcome: o });
        }
        return done('defect', { name: n, title, classes, rules });
      }
      default: return fail('declaration'); // prettier-ignore
    }
  };
  const act = (): Node => {
    const t = la();
    const done = (k: string, rest: Node): Node => ({ kind: k, at: since(t), ...rest });
    if (is('expect')) return expectation(t);
    if (kind('number', 1) && !is('outing')) {
      const n = name();
      const value = quantity();
      return done('act-meter', { name: n, value });
    }
    if (is('reads', 1)) {
      const n = name();
      next();
      const l = level();
      return done('act-reads', { name: n, level: l });
    }
    next();
    switch (t.text) {
      case 'done': return ((tasks) => done('act-done', { tasks }))(list(name)); // prettier-ignore
      case 'outing':
      case 'plans': {
        const planned = t.text === 'plans';
        if (planned) eat('outing');
        const start = kind('time') ? leaf('time', next()) : undefined;
        const end = start === undefined ? undefined : (eat('to'), leaf('time', take('time')));
        const time = kind('number') ? quantity() : undefined;
        const duties = is('in') ? (next(), list(name)) : [];
        const attachments = is('with') ? (next(), list(name)) : [];
        return done('act-outing', { planned, ...maybe('start', start), ...maybe('end', end), ...maybe('time', time), duties, attachments });
      }
      case 'happens': return ((event) => done('act-happens', { event }))(name()); // prettier-ignore
      case 'closes': return ((defect) => done('act-closes', { defect }))(name()); // prettier-ignore
      case 'opens': {
        const defect = name();
        const more =
          kind('name') &&
          !kind('number', 1) &&
          !is('reads', 1) &&
          !/^(outing|refuelled|plans|storage|enters|done|happens|opens|closes|attached|detached|stands|states)$/.test(la().text);
        const c = more ? name() : undefined;
        return done('act-opens', { defect, ...maybe('class', c) });
      }
      case 'attached':
      case 'detached': return ((attachment) => done(`act-${t.text}`, { attachment }))(name()); // prettier-ignore
      case 'stands': return ((items) => done('act-stands', { items }))(list(stanceItem)); // prettier-ignore
      case 'storage': return ((phase) => done('act-storage', { phase }))(next().text); // prettier-ignore
      case 'refuelled': return done('act-refuelled', {}); // prettier-ignore
      case 'enters': return (eat('service'), done('act-service', {})); // prettier-ignore
      case 'states': {
        const task = name();
        if (!is('at')) return done('act-states', { task });
        next();
        const value = quantity();
        eat('of');
        const meter = name();
        return done('act-states', { task, value, meter });
      }
      default: return fail('act'); // prettier-ignore
    }
  };
  const expectation = (t: Token): Node => {
    next();
    if (is('machine')) return (next(), ((verdict) => ({ kind: 'expect-machine', at: since(t), verdict }))(name()));
    const task = name();
    let state = next().text;
    if (state === 'coming') {
      eat('up');
      state = 'coming-up';
    }
    const why = is('because') ? (next(), because()) : undefined;
    const until: Node[] = [];
    if (is('until')) {
      do {
        next();
        const p = la();
        if (kind('date')) until.push({ kind: 'point-date', at: spot(p), date: leaf('date', next()) });
        else {
          const meter = name();
          const value = quantity();
          until.push({ kind: 'point-meter', at: since(p), meter, value });
        }
      } while (is('or'));
    }
    return { kind: 'expect-task', at: since(t), task, state, ...maybe('because', why), until };
  };
  const because = (): Node => {
    const t = la();
    if (
      kind('number') ||
      (is('multiple') && is('of', 1)) ||
      (is('look') && is('in', 1)) ||
      (is('more') && is('than', 1)) ||
      (calendarAt(0) && (is('on', 1) || is('in', 1)))
    ) {
      const l = limit();
      return { kind: 'because-limit', at: since(t), limit: l };
    }
    if (is('before') || is('after') || is('on')) return ((what) => ({ kind: 'because-occasion', at: since(t), what }))(occasionWhat());
    if (is('when')) return (next(), ((c) => ({ kind: 'because-when', at: since(t), condition: c }))(condition()));
    const n = name();
    return { kind: 'because-name', at: n['at'], name: n };
  };
  const example = (t: Token): Node => {
    const title = str();
    loose = false;
    const lines: Node[] = [];
    while (kind('date')) {
      const d = next();
      const time = kind('time') ? leaf('time', next()) : undefined;
      const items: Node[] = [];
      while (kind('name') || is('expect')) items.push(act());
      lines.push({ kind: 'example-line', at: since(d), date: leaf('date', d), ...maybe('time', time), items });
    }
    loose = true;
    return { kind: 'example', at: since(t), title, lines };
  };
  const header = (): Node => {
    const t = la();
    const role = next().text;
    const n = name();
    const title = str();
    const all: Node[] = [];
    while (!kind('end') && !(opensDeclaration() && !is('for'))) {
      const h = next();
      const done = (k: string, rest: Node): number => all.push({ kind: k, at: since(h), ...rest });
      if (h.text === 'language') ((edition) => done('language', { edition }))(num());
      else if (h.text === 'edition') {
        const number = num();
        eat('of');
        const date = leaf('date', take('date'));
        eat('by');
        const by = str();
        done('edition', { number, date, by });
      } else if (h.text === 'fits') {
        eat('model');
        const model = str();
        const s = is('serial') ? serial() : undefined;
        done('fits', { model, ...maybe('serial', s) });
      } else if (h.text === 'for') {
        eat('attachment');
        done('for-attachment', {});
      } else ((path) => done(h.text, { path }))(str());
    }
    return { kind: 'header', at: since(t), role, name: n, title, clauses: all };
  };
  const head = header();
  const declarations: Node[] = [];
  while (!kind('end')) declarations.push(declaration());
  const last = declarations.at(-1) ?? head;
  const at = { file, start: (head['at'] as { start: number }).start, end: (last['at'] as { end: number }).end };
  return { kind: 'file', at, header: head, declarations, comments };
}
