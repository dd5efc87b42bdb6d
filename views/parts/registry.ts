import { button } from './button.examples.ts';
import { choice } from './choice.examples.ts';
import { errorSummary } from './error-summary.examples.ts';
import { field } from './field.examples.ts';
import type { Part } from './part.ts';
import { result } from './result.examples.ts';
import { select } from './select.examples.ts';
import { table } from './table.examples.ts';
import { tape } from './tape.examples.ts';
import { tapeLine } from './tape-line.examples.ts';
import { textarea } from './textarea.examples.ts';
import { verdict } from './verdict.examples.ts';

/** Every part with its examples, in the order in which they are shown. */
export const parts: readonly Part<object>[] = [
  button,
  field,
  choice,
  select,
  textarea,
  errorSummary,
  result,
  verdict,
  table,
  tape,
  tapeLine,
];
