import { bar } from './bar.examples.ts';
import { button } from './button.examples.ts';
import { candidates } from './candidates.examples.ts';
import { choice } from './choice.examples.ts';
import { dial } from './dial.examples.ts';
import { drawing } from './drawing.examples.ts';
import { empty } from './empty.examples.ts';
import { errorSummary } from './error-summary.examples.ts';
import { facts } from './facts.examples.ts';
import { field } from './field.examples.ts';
import { file } from './file.examples.ts';
import { form } from './form.examples.ts';
import { gapBar } from './gap-bar.examples.ts';
import { hold } from './hold.examples.ts';
import { missing } from './missing.examples.ts';
import { notice } from './notice.examples.ts';
import { ownStop } from './own-stop.examples.ts';
import { pager } from './pager.examples.ts';
import type { AnyPart } from './part.ts';
import { photographs } from './photographs.examples.ts';
import { question } from './question.examples.ts';
import { result } from './result.examples.ts';
import { select } from './select.examples.ts';
import { statusLine } from './status-line.examples.ts';
import { stepHeader } from './step-header.examples.ts';
import { table } from './table.examples.ts';
import { tag } from './tag.examples.ts';
import { tape } from './tape.examples.ts';
import { tapeLine } from './tape-line.examples.ts';
import { textarea } from './textarea.examples.ts';
import { unsent } from './unsent.examples.ts';
import { verdict } from './verdict.examples.ts';

export { frames } from './frames.examples.ts';

/** Every part with its examples, in the order in which they are shown. */
export const parts: readonly AnyPart[] = [
  button,
  field,
  choice,
  select,
  textarea,
  form,
  file,
  photographs,
  errorSummary,
  result,
  verdict,
  gapBar,
  candidates,
  question,
  drawing,
  dial,
  table,
  tape,
  tapeLine,
  missing,
  bar,
  stepHeader,
  facts,
  notice,
  hold,
  empty,
  statusLine,
  ownStop,
  unsent,
  pager,
  tag,
];
