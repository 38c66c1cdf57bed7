export interface Bundle {
  readonly text: string;
  readonly inputs: readonly string[];
}
export function fieldBundle(): Promise<Bundle>;
export function fieldScript(): Promise<string>;
export function playground(): Promise<string>;
export function buildPages(dist: string): Promise<void>;
