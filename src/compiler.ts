/**
 * A compiler of just those parts that your schedules ask for, beside an engine of just those kinds.
 *
 * For a page that compiles what its user writes. `compile` of `duewright` is all of them.
 */
export { compilerWith } from './compile/compiler-with.js';
export { access, advice, conditions, examples, files, findings, remarks, weekdayMarks } from './compile/parts.js';

export type { Loader } from './check/load/shelf.js';
export type { CompilerPart } from './compile/compiler-part.js';
export type { Compilation, Compiler, CompilerPartName, PartLack } from './compile/compiler-with.js';
export type { Compiled, CompileOptions } from './compile/graph-of.js';
export type { Diagnostic, Fix, FixGrade, Severity } from './diagnostics/diagnostic.js';
