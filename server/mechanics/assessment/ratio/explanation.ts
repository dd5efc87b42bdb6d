/** The answer of the inference, in SI. */
export type ExplanationResult = object;
