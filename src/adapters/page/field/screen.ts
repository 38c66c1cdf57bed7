/// <reference lib="dom" />

/** One of the page's screens. */
export interface Screen {
  readonly id: string;
  /** Its heading. */
  readonly title: string;
  /** A word or two for the bar at the bottom. */
  readonly tab: string;
  readonly body: readonly Node[];
  /** Shows what is so now. */
  readonly refresh: () => void;
}
