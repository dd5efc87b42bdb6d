import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type {
  Evidence,
  SheetEvidence,
  SheetKindName,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from '../../../mechanics/assessment/plain-build.ts';

/*
 * What all valves of a side say together. Bands of a light-spring ratio (2 % ordinary, 2 to 4.5 % over made for flex),
 * repeats within .002, odd beyond .008, a card within .0025: common practice, no published source. Engine and cam are
 * invented: lobes .350 and .345, rockers sold as 1.6.
 */

export const SCATTER = [0, 0.001, -0.001, 0.001, 0, -0.001, 0.001, 0];

const SIDES = { intake: 0.35, exhaust: 0.345 } as const;

type Column = (lobe: number, cylinder: number, off: number) => number;

export const column = (side: keyof typeof SIDES, kind: SheetKindName, of: Column): SheetEvidence[] =>
  SCATTER.map((off, at) => read(at + 1, side, kind, of(SIDES[side], at + 1, off)));

/** Lobes as on the card, or others; lifts by this ratio of them. */
export const sides = (
  ratio: number | Readonly<Record<keyof typeof SIDES, number>>,
  lobeOff = 0,
): SheetEvidence[] =>
  (['intake', 'exhaust'] as const).flatMap((side) => [
    ...column(side, 'lobe-lift', (lobe, _, off) => lobe + lobeOff + off / 2),
    ...column(
      side,
      'valve-lift',
      (lobe, _, off) => (lobe + lobeOff) * (typeof ratio === 'number' ? ratio : ratio[side]) + off,
    ),
  ]);

export const on = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'one-valve-differs' },
  card: { assumedRatio: 1.6, intake: { lobeLift: 0.35 * IN }, exhaust: { lobeLift: 0.345 * IN } },
  sheet,
  ...more,
});

export const headlines = (evidence: Evidence): string[] =>
  assess(evidence).headlines.map(({ sentence }) => sentence);
/** What the figures raise: how the lash was is asked of every sheet that does not say it. */
export const codes = (evidence: Evidence): string[] =>
  [...new Set(assess(evidence).questions.map(({ code }) => code))].filter((code) => code !== 'lash-not-said');

export const answer = (evidence: Evidence, code: string, said: string, found?: boolean): Evidence => {
  const questions = assess(evidence).questions.filter((each) => each.code === code);
  const answers = questions.map(({ id, ask }, at) => ({
    id: `answer-${at}`,
    line: 900 + at,
    questionId: id,
    code,
    question: ask.slice(0, 100),
    answer: said,
    ...(found === undefined ? {} : { found }),
  }));
  return { ...evidence, answers };
};
