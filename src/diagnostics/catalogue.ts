/**
 * Every code there is, one file per area under `catalogue/`.
 */
import type { CatalogueEntry } from './catalogue-entry.js';
import { accessCatalogue } from './catalogue/access.js';
import { checkCatalogue } from './catalogue/check.js';
import { syntaxCatalogue } from './catalogue/syntax.js';

/** All areas in the order of their codes. An area joins by a line here. */
export const catalogue: readonly CatalogueEntry[] = /* @__PURE__ */ inOneList(syntaxCatalogue, checkCatalogue, accessCatalogue);

function inOneList(...areas: readonly Readonly<Record<string, CatalogueEntry>>[]): readonly CatalogueEntry[] {
  return areas.flatMap((area) => Object.values(area));
}

/** The entry for a code such as `DW112`, or undefined. */
export function catalogueEntry(code: string): CatalogueEntry | undefined {
  return catalogue.find((each) => each.code === code);
}
