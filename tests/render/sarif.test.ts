/**
 * The log against the schema of SARIF 2.1.0 as OASIS published it (tests/cases/sarif, revision rtm.5, read as it stands).
 */
import { readdirSync, readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { describe, expect, test } from 'vitest';
import { sourceText } from '../../src/base/source-text.js';
import { compile } from '../../src/compile/compile.js';
import { sarifLog } from '../../src/render/sarif.js';

interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
}
interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly locations: readonly { physicalLocation: { artifactLocation: { uri: string; uriBaseId?: string }; region: Region } }[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly fixes?: readonly {
    artifactChanges: readonly { replacements: readonly { deletedRegion: Region; insertedContent: { text: string } }[] }[];
  }[];
}
interface Log {
  readonly runs: readonly [{ tool: { driver: { rules: readonly { id: string }[] } }; results: readonly Result[] }];
}

const schemaFile = new URL('../cases/sarif/sarif-2.1.0-rtm.5.schema.json', import.meta.url);
const { $schema: _draft4, id: _id, ...schema } = JSON.parse(readFileSync(schemaFile, 'utf8')) as Record<string, unknown>;
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
addFormats.default(ajv);
const validate = ajv.compile(schema);

function objections(log: unknown): readonly string[] {
  return validate(JSON.parse(JSON.stringify(log)))
    ? []
    : (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message ?? ''}`);
}

function logOf(...texts: readonly string[]): Log {
  const checked = texts.map((text) => {
    const { diagnostics, sources } = compile('pump.due', () => text);
    return { diagnostics, sources: sources.map((source) => ({ ...source, name: `schedules/${source.name}` })) };
  });
  return sarifLog(checked, '1.2.3') as Log;
}

const wrong = `schedule pump "Pump"
  language 1
  fits model "P 1"
meter engine "Hours" counts h
task oil "Oil"
  every 100 h of engin
task water "Water"
  every 10 h of enigne
  reads engine
`;

describe('a SARIF log', () => {
  test('is what the schema asks for, with and without results', () => {
    expect(objections(logOf(wrong))).toEqual([]);
    expect(objections(logOf())).toEqual([]);
    expect(objections({ version: '2.1.0' })).not.toEqual([]);
  });

  test('of everything that check can report is what the schema asks for', () => {
    const folder = new URL('../cases/check/', import.meta.url);
    const texts = readdirSync(folder).map((name) => readFileSync(new URL(name, folder), 'utf8'));
    const log = logOf(...texts);
    expect(log.runs[0].results.length).toBeGreaterThan(50);
    expect(objections(log)).toEqual([]);
  });

  test('names rules of the catalogue, and files from the root', () => {
    const [{ results, tool }] = logOf(wrong).runs;
    expect(results.length).toBe(2);
    for (const { ruleId, ruleIndex, locations } of results) {
      expect(tool.driver.rules[ruleIndex]?.id).toBe(ruleId);
      expect(locations[0]?.physicalLocation.artifactLocation).toEqual({ uri: 'schedules/pump.due', uriBaseId: '%SRCROOT%' });
    }
  });

  test('escapes what a URI cannot hold, and leaves a whole URI alone', () => {
    const { diagnostics } = compile('a', () => wrong);
    const uri = (name: string): unknown =>
      (sarifLog([{ diagnostics, sources: [sourceText(name, wrong)] }], '1.0.0') as Log).runs[0].results[0]?.locations[0]?.physicalLocation
        .artifactLocation;
    expect(uri('my schedules/50 %.due')).toEqual({ uri: 'my%20schedules/50%20%25.due', uriBaseId: '%SRCROOT%' });
    expect(uri('file:///elsewhere/a.due')).toEqual({ uri: 'file:///elsewhere/a.due' });
  });

  test('points at the words that are meant', () => {
    const found = logOf(wrong).runs[0].results.find(({ locations }) => locations[0]?.physicalLocation.region.startLine === 6);
    expect(found?.locations[0]?.physicalLocation.region).toEqual({ startLine: 6, startColumn: 18, endLine: 6, endColumn: 23 });
  });
});

/** The text with a replacement made in it. */
function replaced(text: string, { startLine, startColumn, endLine, endColumn }: Region, by: string): string {
  const { lineStarts } = sourceText('', text);
  const at = (line: number, column: number): number => (lineStarts[line - 1] ?? 0) + column - 1;
  return text.slice(0, at(startLine, startColumn)) + by + text.slice(at(endLine, endColumn));
}

test('its fixes mend what they are for', () => {
  const found = logOf(wrong).runs[0].results.filter(({ fixes }) => fixes !== undefined);
  expect(found.length).toBeGreaterThanOrEqual(2);
  for (const { ruleId, fixes, locations } of found) {
    const replacement = fixes?.[0]?.artifactChanges[0]?.replacements[0];
    if (replacement === undefined) throw new Error(`${ruleId} has a fix without a replacement`);
    const mended = logOf(replaced(wrong, replacement.deletedRegion, replacement.insertedContent.text)).runs[0].results;
    const line = locations[0]?.physicalLocation.region.startLine;
    expect(mended.filter((each) => each.ruleId === ruleId && each.locations[0]?.physicalLocation.region.startLine === line)).toEqual([]);
  }
});

describe('a fingerprint', () => {
  const prints = (text: string): readonly string[] =>
    logOf(text).runs[0].results.map(({ ruleId, partialFingerprints }) => `${ruleId} ${partialFingerprints['duewright/v1'] ?? ''}`);

  test('is different for each result', () => {
    const twice = `${wrong}task fuel "Fuel"\n  every 10 h of enigne\n`;
    expect(new Set(prints(twice)).size).toBe(prints(twice).length);
  });

  test('stays when other lines are put in, taken out or laid out otherwise', () => {
    expect(prints(wrong.replace('meter engine', '# a line\n\nmeter engine'))).toEqual(prints(wrong));
    expect(prints(wrong.replace('  every 100 h of engin\n', '      every   100 h of engin\n'))).toEqual(prints(wrong));
    const fewer = prints(wrong.replace('task oil "Oil"\n  every 100 h of engin\n', ''));
    expect(fewer.length).toBeGreaterThan(0);
    expect(prints(wrong)).toEqual(expect.arrayContaining([...fewer]));
  });

  test('changes with its own line', () => {
    expect(prints(wrong.replace('100 h of engin', '90 h of engin'))[0]).not.toBe(prints(wrong)[0]);
  });

  test('is told once where two schedules share a file', () => {
    expect(logOf(wrong, wrong).runs[0].results.length).toBe(logOf(wrong).runs[0].results.length);
  });
});
