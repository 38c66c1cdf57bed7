/**
 * Which part will decide and about when, at the rate of use that was given.
 */
import type { Explanation, ForecastPart } from '../explain/explanation.js';
import { findRule } from '../explain/find-rule.js';
import { meterQuantity } from './amounts-in-words.js';
import { dayInWords } from './dates-in-words.js';
import { spanInWords } from './span-in-words.js';

/** None or one sentence: `At 3.2 h a week the 100 h of engine come about 20 June 2026 …: the 100 h of engine will decide.` */
export function forecastSentence(explanation: Explanation): readonly string[] {
  const { forecast } = explanation;
  if (forecast === null) return [];
  const parts = forecast.parts.flatMap((part) => partInWords(part, explanation));
  const rated = forecast.parts.find((part) => part.rate !== null);
  const decides = findRule(explanation, forecast.decides);
  if (rated === undefined || decides === null || parts.length === 0) return [];
  const rate = rateInWords(rated, explanation);
  const end = forecast.parts.length > 1 ? `; ${spanInWords(decides, explanation.names)} will decide` : '';
  return [`At ${rate}, as it has been used of late, ${parts.join(', ')}${end}.`];
}

function partInWords(part: ForecastPart, explanation: Explanation): readonly string[] {
  const rule = findRule(explanation, part.node);
  if (rule === null) return [];
  const span = spanInWords(rule, explanation.names);
  const come = /^the \d/.test(span) ? 'come' : 'comes';
  return [`${span} ${come} ${part.rate === null ? 'on' : 'about'} ${dayInWords(part.about)}`];
}

function rateInWords(part: ForecastPart, explanation: Explanation): string {
  const due = findRule(explanation, part.node)?.limit?.due;
  const meter = due?.on === 'meter' ? due.meter : '';
  return `${meterQuantity((part.rate ?? 0) * 7, meter, explanation.names)} a week`;
}
