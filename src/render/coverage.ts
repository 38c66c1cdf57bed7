/**
 * Which rules no worked example shows, and an example for each that an author may take over.
 */
import type { CoverageItem, CoverageKind, ExamplesReport } from '../examples/report.js';
import { placeInWords } from './place-in-words.js';
import { safeText } from './safe-text.js';
import type { Style } from './style.js';
import { wrap } from './wrap.js';

const kinds: Readonly<Record<CoverageKind, string>> = {
  limit: 'limits, reached and not',
  occasion: 'occasions',
  condition: 'conditions, true, false and unknown',
  band: 'bands',
  'defect class': 'classes of defects',
};

/** The counts by kind, then what is not shown, by its line, each with a proposal where there is one. */
export function renderCoverage(report: ExamplesReport, style: Style): string {
  const { items, covered, wanted } = report.coverage;
  const missing = items.flatMap((item, index) => missingBlock(report, item, index, style));
  const note = 'A proposal says what the schedule says now. Take it over only if that is what you mean.';
  return [
    `Shown by the examples: ${covered} of ${wanted}.`,
    ...countLines(items),
    ...(missing.length === 0 ? [] : ['', 'Not shown:', ...missing]),
    ...(report.proposals.length === 0 ? [] : wrap(note, style.width)),
  ].join('\n');
}

function countLines(items: readonly CoverageItem[]): readonly string[] {
  return (Object.keys(kinds) as CoverageKind[]).flatMap((kind) => {
    const outcomes = items.filter((item) => item.kind === kind).flatMap((item) => item.outcomes);
    const seen = outcomes.filter(({ by }) => by !== null).length;
    return outcomes.length === 0 ? [] : [`  ${String(seen).padStart(4)} of ${String(outcomes.length).padStart(4)}  ${kinds[kind]}`];
  });
}

function missingBlock(
  { proposals }: ExamplesReport,
  { of, place, outcomes }: CoverageItem,
  index: number,
  style: Style,
): readonly string[] {
  const missing = outcomes.filter(({ by }) => by === null).map(({ outcome }) => outcome);
  if (missing.length === 0) return [];
  const head = `${placeInWords(place)}: ${of}: ${safeText(place.text)}: never ${missing.join(', never ')}`;
  const texts = proposals.filter(({ item }) => item === index).flatMap(({ proposal }) => (proposal === null ? [] : [proposal]));
  return [
    ...wrap(head, style.width - 2).map((line, at) => `  ${at === 0 ? '' : '  '}${line}`),
    ...texts.flatMap(({ text, shows }) => [
      ...(shows ? [] : ['      # does not show it yet']),
      ...text
        .trimEnd()
        .split('\n')
        .map((line) => `      ${line}`),
      '',
    ]),
  ];
}
