import { formatNumber } from '../../../shared/quantities/format.ts';
import { turningCaution } from '../cam/caution.ts';
import { allowanceSource, SPRING_LOAD } from '../kit/allowances.ts';
import { LBF } from '../kit/si.ts';
import { makerFirst, springCaution } from '../springs/caution.ts';
import { figureRows } from './figure-rows.ts';
import { gapRows } from './gap-row.ts';
import type { ConsequenceInput, Consequences, FigureRow } from './types.ts';

/** Open load from which the stud is worth a word: common practice keeps 3/8 studs below 300 to 350 lb. */
const STUD_WORD = 300 * LBF;

/** Every adjuster is set again: what a turn does at the valve has changed with the ratio. */
export function adjustersWord({ before, after, mounting, lifter }: ConsequenceInput): string {
  const what = lifter === 'hydraulic' ? 'preload' : lifter === 'solid' ? 'lash' : 'lash or preload';
  const again = `Set every adjuster again: the ${what} it had belongs to the other ratio.`;
  if (before === undefined || after === undefined || mounting === undefined || mounting === 'pedestal')
    return again;
  const pitches = (ratio: number) => formatNumber(mounting === 'stud' ? 1 + ratio : ratio, 2);
  const screw = mounting === 'stud' ? 'the nut' : 'a screw over the pushrod';
  return `${again} One turn of ${screw} moves the gap at the valve by ${pitches(after.value)} pitches instead of ${pitches(before.value)}.`;
}

/** What the figures rest on, in words. */
export function assumptionsOf(input: ConsequenceInput, calculated: boolean): string[] {
  return [
    'nothing in the train bends; the spring’s rate stays the same over the lift',
    ...(input.lifter !== 'hydraulic' && input.lash === undefined
      ? ['no lash, since none is known: the most lift']
      : []),
    'piston to valve is calculated at no lash, with the lobe between the card’s durations as a smooth model',
    ...(input.spring.seatLoad === undefined
      ? []
      : [
          `loads are taken as good to ${SPRING_LOAD.share * 100} % of what is stated (${SPRING_LOAD.source})`,
        ]),
    ...(calculated
      ? [
          `heights as entered are taken as good to .005 in (${allowanceSource('height-reading')})`,
          `the cam is taken to stand within 2 degrees of its card (${allowanceSource('cam-timing')})`,
        ]
      : []),
  ];
}

/** Said wherever a gap is short. */
export const shortCaution =
  'A gap is short of its limit: stop, do not run it so, and have a qualified shop look.';

export function cautionsOf(
  input: Pick<ConsequenceInput, 'mounting'>,
  figures: readonly { readonly name: FigureRow['name']; readonly after?: number }[],
  stop: boolean,
): string[] {
  const open = figures.find((figure) => figure.name === 'open-load')?.after;
  return [
    ...(stop ? [shortCaution] : []),
    ...(input.mounting === 'stud' && open !== undefined && open >= STUD_WORD
      ? ['3/8 studs are commonly kept below about 300 to 350 lb open; the stud maker’s figure goes first.']
      : []),
    turningCaution,
    springCaution,
    makerFirst,
  ];
}

/**
 * What another rocker ratio does in one engine: figures and gaps before (the card's ratio) and after (the measured
 * one), each gap measured or calculated, with its limit, its uncertainty and a verdict.
 *
 * Equation: each gap as its own computation has it; half-width of a calculated gap = √((∂gap/∂r·U₉₅(r))² + inputs²)
 *
 * @param input [SI] what is known; whatever is missing is named at the rows that lack it
 * @returns figures, gaps, stop (some gap short), adjusters, assumptions, cautions
 *
 * Validity: as the computations used; a calculated gap is `clear` only when all of its interval is at or above the limit,
 * and never from a running-spring ratio.
 * Source: the computations’ own; limits and allowances carry theirs.
 */
export function consequences(input: ConsequenceInput): Consequences {
  const figures = figureRows(input);
  const gaps = gapRows(input);
  const stop = gaps.some((gap) => gap.verdict === 'short');
  return {
    figures,
    gaps,
    stop,
    adjusters: adjustersWord(input),
    assumptions: assumptionsOf(
      input,
      gaps.some((gap) => gap.after?.basis === 'calculated'),
    ),
    cautions: cautionsOf(input, figures, stop),
  };
}
