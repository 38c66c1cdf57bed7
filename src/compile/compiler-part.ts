import type { Rule } from '../check/context.js';
import type { Bring } from '../check/load/gather.js';
import type { ExampleUses } from '../check/references.js';
import type { ParserPart } from '../syntax/machinery.js';
import type { GraphMakers } from './graph-of.js';
import type { GraphCheck } from './graph-finding.js';

/** Something that a compiler may be made without. What it has is its own business: give it to `compilerWith`. */
export interface CompilerPart {
  readonly reader?: ParserPart;
  readonly rules?: readonly Rule[];
  readonly bring?: Bring;
  readonly ofExample?: ExampleUses;
  readonly makers?: GraphMakers;
  readonly graphChecks?: readonly GraphCheck[];
}
