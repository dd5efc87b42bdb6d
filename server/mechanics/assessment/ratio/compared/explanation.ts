import type { z } from 'zod';
import type { explainOutput } from '../../../explain-readings/json-output.ts';

/** The answer of the inference, in SI. */
export type ExplanationResult = z.output<typeof explainOutput>;
