import type { StopReason } from '../../../../server/mechanics/assessment/assessment.ts';
import type { Evidence, SheetEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { numbered } from './builds.ts';

type Raise = (evidence: Evidence) => Evidence;

const said =
  (more: Partial<Evidence['call']>): Raise =>
  (evidence) => ({ ...evidence, call: { ...evidence.call, stopsLifted: [], ...more } });

function onSheet(kind: SheetEvidence['kind'], inches: number, cylinder: number): SheetEvidence {
  return {
    id: `raised-${kind}-${cylinder}`,
    line: 0,
    standing: true,
    cylinder,
    valve: 'exhaust',
    kind,
    reading: { value: inches * IN },
    readAs: `${inches} in`,
    tool: 'indicator',
    spring: 'light',
    lifter: 'solid',
    arms: 'these',
  };
}

/** Lobes of exhausts alone, and no card, so that nothing else that was generated doubts their rows. */
const lobes: Raise = (evidence) => ({
  ...evidence,
  card: { intake: {}, exhaust: {} },
  sheet: [0.33, 0.331, 0.318, 0.33].map((lobe, index) => onSheet('lobe-lift', lobe, index + 1)),
  answers: [],
});

const lash: Raise = (evidence) => ({
  ...evidence,
  lash: (['set', 'found', 'set', 'found'] as const).map((moment, index) => ({
    id: `raised-lash-${index}`,
    line: 0,
    standing: true,
    cylinder: 2,
    valve: 'intake',
    gap: { value: (moment === 'set' ? 0.017 : 0.026) * IN },
    readAs: moment === 'set' ? '.017 in' : '.026 in',
    moment,
    engine: 'cold',
    nut: 'held',
    day: `2026-02-0${index + 1}`,
  })),
});

const edge: Raise = (evidence) => ({
  ...evidence,
  tipMarks: [
    {
      id: 'raised-mark',
      line: 0,
      standing: true,
      cylinder: 4,
      valve: 'intake',
      width: 0.12 * IN,
      side: 'exhaust',
      off: 0.125 * IN,
      stem: 0.342 * IN,
      readAs: '.120 in',
    },
  ],
});

const preload: Raise = (evidence) => ({
  ...evidence,
  workings: [
    ...evidence.workings,
    {
      id: 'raised-preload',
      line: 1e6,
      computation: 'lifter-preload',
      set: {
        of: 'preload',
        thread: '7/16-20 UNF',
        size: '7/16',
        pitch: 0.05 * IN,
        mount: 'stud-nut',
        ratio: 1.6,
        turns: 2,
        preload: 0.1625 * IN,
        inBand: 'over',
        from: 0.02 * IN,
        to: 0.06 * IN,
        wanted: false,
        travel: 0.15 * IN,
      },
    },
  ],
});

/** Told beside whatever else was answered: an answer to another question takes nothing from it. */
const told =
  (code: string, answer: string): Raise =>
  (evidence) => ({
    ...evidence,
    answers: [...evidence.answers, { id: 'raised-sign', line: 1e6, code, question: code, answer }],
  });

/** What raises each kind of stop. A kind that is left out does not compile. */
const RAISES: Readonly<Record<StopReason['code'], Raise>> = {
  held: said({ hold: { reason: 'a tight spot near the top' } }),
  contact: said({ contact: 'something' }),
  'gap-short': (evidence) => ({
    ...evidence,
    sheet: [...evidence.sheet, onSheet('piston-to-valve', 0.031, 1)],
  }),
  'lash-grew-again': lash,
  'lobe-worn': lobes,
  'mark-at-the-edge': edge,
  'part-damaged': told('noise-pushrod', 'bent'),
  'plunger-bottomed': preload,
  'sign-of-damage': told('noise-signs', 'metal'),
};

/** The build with a stop of this kind raised on it, whatever else is known of it. */
export const withStop = (evidence: Evidence, code: StopReason['code']): Evidence =>
  numbered(RAISES[code]({ ...evidence, call: { ...evidence.call, stopsLifted: [] } }));

export const STOP_CODES: readonly StopReason['code'][] = [
  'held',
  'contact',
  'gap-short',
  'lash-grew-again',
  'lobe-worn',
  'mark-at-the-edge',
  'part-damaged',
  'plunger-bottomed',
  'sign-of-damage',
];
