import { z } from 'zod';

const LONE_SURROGATE = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/;

/** PostgreSQL can't hold U+0000 and turns a lone surrogate into another character: both are refused. */
export function isStorable(text: string): boolean {
  return !text.includes('\u0000') && !LONE_SURROGATE.test(text);
}

/** A text that is kept word for word. */
export function words(description: string, most = 200) {
  return z
    .string()
    .max(most, { error: (issue) => `must be ${String(issue.maximum)} characters or fewer` })
    .refine(isStorable, { error: 'has a character that can’t be stored', params: { fault: 'not-allowed' } })
    .meta({ description });
}

/** A text that must say something. */
export function someWords(description: string, most = 200) {
  return words(description, most).refine((text) => text.trim() !== '', {
    error: 'must not be empty',
    params: { fault: 'required' },
  });
}
