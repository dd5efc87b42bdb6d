/** A figure, or a word, of a kept sum that the build has otherwise. */
export interface Off {
  /** Both, in a sentence. */
  readonly said: string;
  /** What an answer is of: a figure that is put right once more is asked about again. */
  readonly key: string;
}
