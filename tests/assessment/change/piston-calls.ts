import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { read } from '../../mechanics/assessment/plain-build.ts';
import { type ChangeCall, ENGINE } from './change-call.ts';

/** A piston gap of .120 in on 1 intake, read with the 1.5 arms, the lobe .140 up there. */
const PISTON: Evidence = {
  ...ENGINE,
  taken: { intake: { lobeLiftAtClosest: 0.14 * IN }, exhaust: {} },
  sheet: [
    read(1, 'intake', 'piston-to-valve', 0.12, { arms: 'before' }),
    read(1, 'intake', 'piston-to-valve', 0.135, { arms: 'before' }),
  ],
};

/** The same, asked and answered: no lash was in it. */
const AT_ZERO_LASH: Evidence = {
  ...PISTON,
  answers: PISTON.sheet.map(({ id }, index) => ({
    id: `zero-lash-${index}`,
    line: 90 + index,
    questionId: `question:gap-lash-not-said:1-intake:${id}:gaplashnotsaid`,
    code: 'gap-lash-not-said',
    question: 'Was the lash taken up when piston to valve of 1 intake was read?',
    answer: 'zero',
  })),
};

/** Calls about a gap at the piston; the relations and widths that they are worked out by are in `change-calls.ts`. */
export const PISTON_CALLS: readonly ChangeCall[] = [
  {
    // .120 − .140 × .1 = .106; down √(.002² + (.140·.030)² + (.140·.072)²) = .0111, up √(.002² + (.140·.0675)² + (.140·.032)²) =
    // .0106: .094 to .117 against .080. The larger .135
    // that was read as well replaces nothing. Nobody said whether the card’s lash of .020 was in it: .094 − .020 = .074.
    said: 'One twenty at the piston with the one fives, lobe was up one forty there.',
    evidence: PISTON,
    gaps: [
      {
        key: '1-intake',
        gap: 'piston-to-valve',
        word: 'close',
        value: 0.106,
        low: 0.074,
        high: 0.117,
        sentence:
          'Piston to valve, 1 intake with the planned 1.6: .106 in (.074 to .117), calculated, against .080 in: close, it can’t be told from the limit. It needs whether the lash was in it: with lash in, it reads that much larger. Calculated from .120 in, read with the arms before, and what the ratio changes. It is calculated: measure it before it runs.',
      },
    ],
  },
  {
    said: 'I held that one down to zero lash.',
    evidence: AT_ZERO_LASH,
    gaps: [{ key: '1-intake', gap: 'piston-to-valve', word: 'clear', value: 0.106, low: 0.094, high: 0.117 }],
  },
  {
    // Aluminium rods: .080 + .030 = .110 lies in .094 to .117. For racing .060 + .030 = .090 lies below it.
    said: 'Oh, and the rods are aluminium.',
    evidence: { ...PISTON, engine: { ...PISTON.engine, rodMaterial: 'aluminium' } },
    // Nobody said how the lash was: .020 of it may be in the gap that was read.
    gaps: [{ key: '1-intake', gap: 'piston-to-valve', word: 'close', value: 0.106, low: 0.074, high: 0.117 }],
  },
  {
    // .090 lies in .074 to .117 while nobody said whether lash was in it.
    said: 'It is a race engine, with aluminium rods.',
    evidence: { ...PISTON, engine: { ...PISTON.engine, rodMaterial: 'aluminium', use: 'race' } },
    gaps: [{ key: '1-intake', gap: 'piston-to-valve', word: 'close', value: 0.106, low: 0.074 }],
  },
  {
    said: 'Race, aluminium rods, and it was read at zero lash.',
    evidence: { ...AT_ZERO_LASH, engine: { ...PISTON.engine, rodMaterial: 'aluminium', use: 'race' } },
    gaps: [{ key: '1-intake', gap: 'piston-to-valve', word: 'clear', value: 0.106, low: 0.094 }],
  },
];
