/**
 * Duewright whole: schedules are compiled, machines assessed, answers explained and put into words.
 *
 * No function here touches a file, a clock or a network: texts, entries and the moment are arguments. For a program that only
 * runs compiled schedules there is `duewright/engine`, which is a good deal smaller.
 */
export * from './engine.js';
export * from './ahead.js';

export { lineOf, positionOf, sourceText } from './base/source-text.js';
export { nearNames } from './base/near-name.js';
export type { Digest, WithDigest } from './base/sha256.js';
export { checkAccess } from './access/check-access.js';
export type { AccessFault, AccessFaultKind } from './access/access-fault.js';
export { check } from './check/check.js';
export { LiveCheck } from './check/live-check.js';
export { definitionsOf } from './check/model.js';
export { compile, compileChecked } from './compile/compile.js';
export { catalogue, catalogueEntry } from './diagnostics/catalogue.js';
export { compareEditions } from './compare/compare-editions.js';
export { format } from './format/format.js';
export { runExamples } from './examples/run-examples.js';
export { meaningFingerprint } from './graph/meaning-fingerprint.js';
export { inputSchema } from './render/inputs/input-schema.js';
export { inputTypes } from './render/inputs/input-types.js';
export { renderDiagnostics } from './render/diagnostics.js';
export { sarifLog } from './render/sarif.js';
export { parse } from './syntax/parse.js';
export { clauseWords, declarationWords, joiningWords } from './syntax/words.js';

export type { Position, SourceText } from './base/source-text.js';
export type { Span } from './base/span.js';
export type { Checked, CheckOptions } from './check/check.js';
export type * from './compare/comparison.js';
export type { LoggedMachine } from './compare/moves.js';
export type * from './examples/report.js';
export type { Checked as CheckedSources } from './render/sarif.js';
export type { ExamplesOptions } from './examples/run-examples.js';
export type { Formatted } from './format/format.js';
export type { Limits } from './check/load/limits.js';
export type { Loader } from './check/load/shelf.js';
export type { Definition, DefinitionOf, Home, Model, NameKind, Reference } from './check/model.js';
export type { CatalogueEntry } from './diagnostics/catalogue-entry.js';
export type { Compiled, CompileOptions } from './compile/graph-of.js';
export type { Json, JsonSchema } from './history/entry-json-schema.js';
export type { Inputs } from './render/inputs/input-definitions.js';
export type { Diagnostic, Fix, FixGrade, Severity } from './diagnostics/diagnostic.js';
