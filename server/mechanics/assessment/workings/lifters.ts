import { defined } from '../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { USUAL_TRAVEL } from '../../setting/usual-travel.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { done } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { allKept, BUILD, type KeptSet, lastKept, withAllSums } from '../common/kept.ts';
import type { PreloadEvidence } from '../evidence/kept-sums.ts';
import type { Evidence } from '../evidence.ts';
import type { Band } from './over-band.ts';

const isHydraulic = ({ engine }: Evidence): boolean | undefined =>
  engine.lifter === undefined ? undefined : isHydraulicLifter(engine.lifter);

/** Further than plungers usually go, and nobody said how far this one does: it may stand on its bottom. */
function onSomeBottom(set: PreloadEvidence): PreloadEvidence {
  if (set.travel !== undefined || set.preload <= USUAL_TRAVEL + EQUAL) return set;
  return { ...set, travel: USUAL_TRAVEL, travelUnsaid: true };
}

/** How far the plungers go, as it was said last: it holds for every sum of the engine, whenever it was said. */
export const travelSaid = (evidence: Pick<Evidence, 'workings'>): number | undefined =>
  allKept(withAllSums(evidence), 'preload').findLast(({ set }) => set.travel !== undefined)?.set.travel;

/** Every preload that was kept, oldest first; on solid lifters there is no plunger that gives way to it. */
export function keptPreloads(evidence: Evidence): KeptSet<PreloadEvidence>[] {
  const solid = isHydraulic(evidence) === false;
  const travel = travelSaid(evidence);
  return allKept(evidence, 'preload').map((kept) => {
    const set = { ...kept.set, ...defined({ travel: kept.set.travel ?? travel }) };
    return solid && set.preload > EQUAL
      ? { ...kept, set: { ...set, travel: 0, solid: true } }
      : { ...kept, set: onSomeBottom(set) };
  });
}

/**
 * Turns of a plunger that were counted press it, by whichever sum they were kept: those that a wanted preload needs were
 * not turned yet.
 */
export function turnsPressed(evidence: Evidence, band: Band): KeptSet<PreloadEvidence>[] {
  const travel = travelSaid(evidence);
  if (isHydraulic(evidence) === false) return [];
  return allKept(evidence, 'turns').flatMap(({ set, ...kept }) => {
    const { lifter, byPreload, preload = 0 } = set;
    if (lifter !== 'hydraulic' || byPreload === true || preload <= EQUAL) return [];
    const { thread, pitch, size, mount, ratio, zeroFoundBy, turns } = set;
    const { from, to, wanted } = band;
    const inBand = preload < from - EQUAL ? 'under' : preload > to + EQUAL ? 'over' : 'within';
    const pressed: PreloadEvidence = {
      ...{ of: 'preload', thread, pitch, size, mount, ratio, turns, preload, from, to, wanted, inBand },
      ...defined({ zeroFoundBy, travel }),
    };
    return [{ ...kept, set: onSomeBottom(pressed) }];
  });
}

/** Turns of a solid lifter change a gap, those of a hydraulic one press a plunger: one of the two is said wrong. */
export function lifterQuestions(evidence: Evidence): AssessedQuestion[] {
  const turns = lastKept(evidence, 'turns');
  const hydraulic = isHydraulic(evidence);
  if (turns === undefined || hydraulic === undefined || (turns.set.lifter === 'hydraulic') === hydraulic)
    return [];
  const name = (is: boolean) => (is ? 'hydraulic' : 'solid');
  return [
    asked(
      {
        code: 'lifters-differ',
        weight: 'strong',
        ask: 'Which lifters are in it: solid or hydraulic?',
        size: `The build says ${name(hydraulic)}; the turns were worked out for ${name(!hydraulic)} ones.`,
        test: 'read the number on the lifters’ box, or look at one; then put right what was said wrong.',
        byLooking: true,
        restsOn: [],
      },
      {
        about: BUILD,
        step: 'adjuster',
        answers: evidence.answers,
        choices: [
          {
            code: 'found',
            label: 'As the build says',
            changes: 'The turns are worked out again.',
            leadsTo: done('work the turns out again for the lifters that are in it.'),
          },
          { code: 'not-found', label: 'As the turns say', changes: 'The build’s description is put right.' },
        ],
      },
    ),
  ];
}
