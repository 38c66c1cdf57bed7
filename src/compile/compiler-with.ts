import type { Span } from '../base/span.js';
import { Examiner } from '../check/examiner.js';
import { bringAlone } from '../check/load/bring-alone.js';
import type { Loader } from '../check/load/shelf.js';
import { refusals } from '../check/rules/index.js';
import type { GrammarPart } from '../syntax/grammar-part.js';
import { machineryWith, type Machinery } from '../syntax/machinery.js';
import { parseOn } from '../syntax/parse-on.js';
import type { CompilerPart } from './compiler-part.js';
import { graphFrom, type Compiled, type CompileOptions, type GraphMakers } from './graph-of.js';

/** What the parts are called that a schedule can ask for. */
export type CompilerPartName = GrammarPart | 'files';

/** Something that a schedule asks for and the compiler was not given. */
export interface PartLack {
  readonly code: 'part-not-carried';
  readonly part: CompilerPartName;
  /** What asks for it, in the file that was asked for. */
  readonly at: Span;
  /** One sentence without a line break. */
  readonly message: string;
  readonly help: string;
}

/** What became of a schedule that was given to a compiler of some parts only. */
export type Compilation =
  | ({ readonly kind: 'compiled' } & Compiled)
  /** Nothing was compiled, and nothing is said of its mistakes. */
  | { readonly kind: 'refused'; readonly lacks: readonly PartLack[] };

/** A compiler of some parts only. */
export interface Compiler {
  /**
   * As `compile`, and the same graph byte for byte; but refuses a schedule that asks for a part that is not carried. What `compile` gives no graph
   * for has none here either.
   */
  readonly compile: (path: string, load: Loader, options?: CompileOptions) => Compilation;
}

/**
 * A compiler of just those parts that your schedules ask for, so that a bundle carries no others.
 *
 * With none it compiles a schedule that stands in one file, without worked examples and without moving parts and places, and tells mistakes by what it
 * found and what it expected.
 *
 * @example
 * const compiler = compilerWith([examples]);
 * const answer = compiler.compile('pump.due', () => text);
 * if (answer.kind === 'compiled' && answer.graph !== null) use(answer.graph);
 */
export function compilerWith(parts: readonly CompilerPart[]): Compiler {
  const rules = [refusals, ...parts.map((part) => part.rules ?? [])].flat();
  const checks = parts.flatMap(({ graphChecks = [] }) => graphChecks);
  const graphMakers: GraphMakers = Object.assign({}, ...parts.map(({ makers }) => makers)) as GraphMakers;
  const { ofExample = () => [] } = parts.find((part) => part.ofExample !== undefined) ?? {};
  const { bring } = parts.find((part) => part.bring !== undefined) ?? {};
  // Made when the first text is read, for it takes some milliseconds. It holds nothing from one text to the next.
  let machinery: Machinery | undefined;
  const compile = (path: string, load: Loader, options: CompileOptions = {}): Compilation => {
    const lacks: PartLack[] = [];
    const parse = (text: string, file: number) => {
      machinery ??= machineryWith(parts.flatMap(({ reader }) => reader ?? []));
      const read = parseOn(machinery, text, file);
      lacks.push(...read.missing.map(({ part, at }) => lackOf(part, at)));
      return read;
    };
    const examination = { rules, ofExample, bring: bring ?? bringAlone((at) => lacks.push(lackOf('files', at))) };
    const checked = new Examiner((source, file) => parse(source.text, file), examination).examine(path, load, options);
    if (lacks.length > 0) return { kind: 'refused', lacks };
    return { kind: 'compiled', ...graphFrom(checked, graphMakers, checks, options) };
  };
  return { compile };
}

const what: Readonly<Record<CompilerPartName, string>> = {
  conditions: 'Conditions are',
  findings: 'Gauges, dipsticks, defects and what follows from them are',
  access: 'Moving parts, places and steps are',
  examples: 'Worked examples are',
  files: 'What other files say is',
  weekdayMarks: 'Days by the week are',
};

function lackOf(part: CompilerPartName, at: Span): PartLack {
  return {
    code: 'part-not-carried',
    part,
    at,
    message: `${what[part]} read by \`${part}\`, which this compiler was not given.`,
    help: `Give \`compilerWith\` the part \`${part}\`, or use \`compile\`.`,
  };
}
