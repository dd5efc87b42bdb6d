import { defined } from '../../../../shared/defined.ts';
import { USUAL_PRELOADS } from '../../setting/setting-table.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { bareInches, inches } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { PreloadEvidence, SetEvidence, TurnsEvidence } from './evidence.ts';
import { BUILD, type KeptSet } from './kept.ts';
import { pastBottom, preloadWithin } from './said.ts';

export const BAND = USUAL_PRELOADS.usual;

type Pressing = PreloadEvidence | TurnsEvidence;

const CHOICES: AssessedQuestion['answers'] = [
  { code: 'not-found', label: 'Yes, its maker asks for it', changes: 'The turns count.' },
  {
    code: 'found',
    label: 'No',
    changes: 'Zero lash is looked for again, and the turns are worked out again.',
  },
];

/** Past the band by more than turns are counted to; a band that was asked for is the maker’s own. */
export function isOverBand(set: Pressing): boolean {
  if (set.of === 'turns')
    return set.lifter === 'hydraulic' && (set.preload ?? 0) >= BAND.to + preloadWithin(set);
  const isTold = set.solid === true || set.travelUnsaid === true || pastBottom(set) !== undefined;
  return !isTold && !set.wanted && set.preload >= set.to + preloadWithin(set);
}

/** A preload over the usual is asked of the lifter’s maker, and its zero is looked for again. */
export function overBandQuestions(
  { id, set }: KeptSet<SetEvidence>,
  { answers }: Evidence,
): AssessedQuestion[] {
  if ((set.of !== 'turns' && set.of !== 'preload') || !isOverBand(set)) return [];
  const { from, to } = set.of === 'turns' ? BAND : set;
  return [
    asked(
      {
        code: 'preload-over',
        weight: 'strong',
        ask: 'Does the lifter’s maker ask for that much preload?',
        size: `The plunger would be pressed ${inches(set.preload ?? 0)}; ${from === 0 ? '0' : bareInches(from)} to ${inches(to)} is usual.`,
        test: 'let the lifter bleed down and find zero lash again by up-and-down play. Then ask how far its plunger goes.',
        byLooking: set.of === 'preload',
        restsOn: [],
      },
      { about: BUILD, step: 'adjuster', ...defined({ among: id }), answers, choices: CHOICES },
    ),
  ];
}
