/**
 * The style sheets in the order in which they are joined: raw values, meanings, ground, frames, parts,
 * and paper last, because print has the final word.
 */
export const STYLE_SHEETS = [
  'values.css',
  'meanings.css',
  'base.css',
  'layout.css',
  'button.css',
  'field.css',
  'choice.css',
  'error-summary.css',
  'result.css',
  'verdict.css',
  'gap-bar.css',
  'question.css',
  'drawing.css',
  'table.css',
  'tape.css',
  'missing.css',
  'step-header.css',
  'notice.css',
  'facts.css',
  'pager.css',
  'reference-parts.css',
  'forced-colors.css',
  'print.css',
] as const;
