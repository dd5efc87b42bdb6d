/** A part of the mechanics that is mutated by itself, with the tests that must notice. */
export interface Slice {
  readonly name: string;
  /** Folders and files of `server/mechanics/`; with `*` at the end, how the paths of files begin. */
  readonly sources: readonly string[];
  /** How the paths of the tests begin, below `tests/mechanics/`. */
  readonly tests: readonly string[];
  /** How the paths of tests begin that come to it through the assessment of a whole build, below `tests/`. */
  readonly throughAssessment?: readonly string[];
}
