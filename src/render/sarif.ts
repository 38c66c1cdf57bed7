/**
 * Diagnostics as SARIF 2.1.0 (OASIS standard, 27 March 2020), for code hosts and editors that show it.
 */
import { lineOf, positionOf, type SourceText } from '../base/source-text.js';
import type { Span } from '../base/span.js';
import { catalogue } from '../diagnostics/catalogue.js';
import type { CatalogueEntry } from '../diagnostics/catalogue-entry.js';
import type { Diagnostic, Fix } from '../diagnostics/diagnostic.js';
import { sha256 } from '../base/sha256.js';

/** One schedule's diagnostics with the files that they are in. */
export interface Checked {
  readonly diagnostics: readonly Diagnostic[];
  /** Named by their paths from the folder that the log's URIs start from. */
  readonly sources: readonly SourceText[];
}

const rootId = '%SRCROOT%';

/**
 * A SARIF log of one run over several schedules. What two schedules say of a file that both use is said once.
 *
 * Every URI is relative to the root folder, unless it lies outside of it. A partial fingerprint is made of the code, the file and the words of
 * the line, so that it stays as it is while other lines are edited.
 *
 * @param version of the program, as it says it itself.
 */
export function sarifLog(checked: readonly Checked[], version: string): unknown {
  const rules = [...catalogue].sort((a, b) => (a.code < b.code ? -1 : 1));
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'duewright', semanticVersion: version, rules: rules.map(ruleOf) } },
        invocations: [{ executionSuccessful: true }],
        originalUriBaseIds: { [rootId]: { description: { text: 'The folder in which the schedules were checked.' } } },
        columnKind: 'utf16CodeUnits',
        results: resultsOf(checked, new Map(rules.map(({ code }, index) => [code, index]))),
      },
    ],
  };
}

function ruleOf({ code, severity, title, explanation, wrong, right }: CatalogueEntry): unknown {
  return {
    id: code,
    shortDescription: { text: `${title}.` },
    fullDescription: { text: explanation },
    help: { text: `${explanation}\n\nDraws it:\n${wrong}\n\nPut right:\n${right}` },
    defaultConfiguration: { level: severity },
  };
}

function resultsOf(checked: readonly Checked[], rules: ReadonlyMap<string, number>): readonly unknown[] {
  const results = new Map<string, unknown>();
  for (const { diagnostics, sources } of checked) {
    const met = new Map<string, number>();
    for (const each of diagnostics) {
      const key = keyOf(each, sources);
      const count = met.get(key) ?? 0;
      met.set(key, count + 1);
      const fingerprint = sha256(`${key} ${count}`);
      if (!results.has(fingerprint)) results.set(fingerprint, resultOf(each, sources, rules, fingerprint));
    }
  }
  return [...results.values()];
}

/** What makes an occurrence the same one after other lines were edited. */
function keyOf({ code, at }: Diagnostic, sources: readonly SourceText[]): string {
  const source = sources[at.file];
  if (source === undefined) return code;
  const line = lineOf(source, positionOf(source, at.start).line).replace(/\s+/g, ' ').trim();
  return JSON.stringify([code, source.name, line]);
}

function resultOf(
  diagnostic: Diagnostic,
  sources: readonly SourceText[],
  rules: ReadonlyMap<string, number>,
  fingerprint: string,
): unknown {
  const { code, severity, message, help, at, labels, fixes } = diagnostic;
  const ruleIndex = rules.get(code);
  return {
    ruleId: code,
    ...(ruleIndex === undefined ? {} : { ruleIndex }),
    level: severity,
    message: { text: help === undefined ? message : `${message} ${help}` },
    locations: [{ physicalLocation: physical(at, sources) }],
    ...(labels.length === 0
      ? {}
      : {
          relatedLocations: labels.map((label, id) => ({
            id,
            message: { text: label.text },
            physicalLocation: physical(label.at, sources),
          })),
        }),
    partialFingerprints: { 'duewright/v1': fingerprint },
    ...(fixes.length === 0 ? {} : { fixes: fixes.map((fix) => fixOf(fix, sources)) }),
  };
}

function fixOf({ title, edits }: Fix, sources: readonly SourceText[]): unknown {
  const files = [...new Set(edits.map(({ at }) => at.file))];
  return {
    description: { text: title },
    artifactChanges: files.map((file) => ({
      artifactLocation: artifact(sources[file]),
      replacements: edits
        .filter(({ at }) => at.file === file)
        .map(({ at, text }) => ({ deletedRegion: region(at, sources[file]), insertedContent: { text } })),
    })),
  };
}

function physical(at: Span, sources: readonly SourceText[]): unknown {
  return { artifactLocation: artifact(sources[at.file]), region: region(at, sources[at.file]) };
}

/** A path as a URI relative to the root; a file outside of it has one with a scheme already. */
function artifact(source: SourceText | undefined): unknown {
  const name = source?.name ?? '';
  if (/^[a-z]+:\/\//.test(name)) return { uri: name };
  return { uri: name.split('/').map(encodeURIComponent).join('/'), uriBaseId: rootId };
}

function region(at: Span, source: SourceText | undefined): unknown {
  if (source === undefined) return { startLine: 1 };
  const [start, end] = [positionOf(source, at.start), positionOf(source, at.end)];
  return { startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column };
}
