/**
 * One kind of problem, as docs/diagnostics.md explains it. Each area lists its own under `catalogue/`.
 */
import type { Span } from '../base/span.js';
import type { Diagnostic, Fix, Severity } from './diagnostic.js';

/** A code, as it is reported. Codes are never reused: DW1xx are about spelling and grammar, DW2xx and up about meaning. */
export interface Code {
  readonly code: string;
  readonly severity: Severity;
}

/** A code with its page. */
export interface CatalogueEntry extends Code {
  /** One line, without a full stop. */
  readonly title: string;
  /** A paragraph: why it is a problem and what to do. */
  readonly explanation: string;
  /** A short text that has the problem, and the same put right. */
  readonly wrong: string;
  readonly right: string;
}

/** What one occurrence of a problem adds to its catalogue entry. */
export interface Finding {
  readonly message: string;
  readonly at: Span;
  readonly labels?: Diagnostic['labels'];
  readonly help?: string;
  readonly fixes?: readonly Fix[];
}

/**
 * Makes the diagnostic for one occurrence of a catalogued problem.
 *
 * @example diagnose(syntaxCodes.strayWords, { message: 'No clause begins with `evry`.', at })
 */
export function diagnose({ code, severity }: Code, finding: Finding): Diagnostic {
  return {
    code,
    severity,
    message: finding.message,
    at: finding.at,
    labels: finding.labels ?? [],
    ...(finding.help === undefined ? {} : { help: finding.help }),
    fixes: finding.fixes ?? [],
  };
}
