import type { Component } from '../../../views/parts/components.ts';
import { strikeConsequences } from '../../assessment/consequences/strike.ts';
import type { CallContext } from '../../call/context.ts';
import type { EntryCorrection } from '../../call/step-correction.ts';
import { type KeptLine, keptLinesTable, strikesOut } from '../../call/strike-out.ts';
import { keptConsequences } from '../../records/consequences/kept.ts';
import { keptText } from './tape-text.ts';

const LINES = { path: '/consequences', step: 'consequences' } as const;

/** Figures of what a ratio does go by their line. */
const keptIn = ({ record }: CallContext): KeptLine[] =>
  keptConsequences(record.events).map(({ seq, by, at, data, struck }) => ({
    id: String(seq),
    seq,
    text: keptText(data),
    by,
    at,
    struck,
  }));

const standingIn = (context: CallContext): KeptLine[] =>
  keptIn(context).filter(({ struck }) => struck === undefined);

/** Figures that were kept, newest first. */
export const keptTable = (context: CallContext): Component[] =>
  keptLinesTable(
    context,
    LINES,
    { caption: 'Figures on the tape', text: 'What the ratio does' },
    keptIn(context).toReversed(),
  );

/** Kept figures struck out by their line, with the reason. */
export const strikesConsequences: EntryCorrection = strikesOut({
  ...LINES,
  form: 'strike-consequences',
  param: 'line',
  missing: 'line with what a ratio does',
  hint: 'Such as “the other arms were on”. The line stays on the tape, struck out.',
  entries: standingIn,
  find: ({ context }, id) => standingIn(context).find((line) => line.id === id),
  strike: ({ tx, principal, call }, id, input) =>
    strikeConsequences(tx, principal, call.buildId, Number(id), input),
});
