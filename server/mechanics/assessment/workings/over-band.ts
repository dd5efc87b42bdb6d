import { defined } from '../../../../shared/defined.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { USUAL_PRELOADS } from '../../setting/setting-table.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { turned } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { BUILD, type KeptSet } from '../common/kept.ts';
import { bareInches, inches } from '../common/said.ts';
import type { PreloadEvidence, SetEvidence, TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Evidence } from '../evidence.ts';
import { pastBottom } from './said.ts';

/** A preload that a plunger should have: the band that was asked for, else the usual one. */
export interface Band {
  readonly from: number;
  readonly to: number;
  readonly wanted: boolean;
}

/** What the plungers of the call are set to: as the newest sum of a preload has it, else the usual. */
export function bandIn(preloads: readonly KeptSet<PreloadEvidence>[]): Band {
  const told = preloads.at(-1)?.set;
  return told === undefined
    ? { from: USUAL_PRELOADS.usual.from, to: USUAL_PRELOADS.usual.to, wanted: false }
    : { from: told.from, to: told.to, wanted: told.wanted };
}

type Pressing = PreloadEvidence | TurnsEvidence;

const choicesOf = ({ wanted }: Band): AssessedQuestion['answers'] => [
  {
    code: 'not-found',
    label: wanted ? 'Yes, it is meant' : 'Yes, its maker asks for it',
    changes: 'The turns count.',
  },
  {
    code: 'found',
    label: 'No',
    changes: 'Zero lash is looked for again, and the turns are worked out again.',
    leadsTo: turned('find zero lash again by up-and-down play, and work the turns out again.'),
  },
];

/** Past the band: how near turns are counted does not make it less. One on its bottom has a question of its own. */
export function isOverBand(set: Pressing, { to }: Pick<Band, 'to'>): boolean {
  if (set.of === 'turns') return set.lifter === 'hydraulic' && (set.preload ?? 0) > to + EQUAL;
  const isTold = set.solid === true || set.travelUnsaid === true || pastBottom(set) !== undefined;
  return !isTold && set.preload > set.to + EQUAL;
}

/** A preload over the band is asked of the lifter’s maker, and its zero is looked for again. */
export function overBandQuestions(
  { id, set }: KeptSet<SetEvidence>,
  told: Band,
  travel: number | undefined,
  { answers }: Evidence,
): AssessedQuestion[] {
  if (set.of !== 'turns' && set.of !== 'preload') return [];
  const band: Band = set.of === 'turns' ? told : set;
  if (!isOverBand(set, band)) return [];
  const goes = travel === undefined ? ' Then ask how far its plunger goes.' : '';
  return [
    asked(
      {
        code: 'preload-over',
        weight: 'strong',
        ask: band.wanted
          ? 'Are these turns meant to go over the band that is wanted?'
          : 'Does the lifter’s maker ask for that much preload?',
        size: `The plunger would be pressed ${inches(set.preload ?? 0)}; ${bandSaid(band)} is ${band.wanted ? 'wanted' : 'usual'}.${travel === undefined ? '' : ` It goes ${inches(travel)}.`}`,
        test: `let the lifter bleed down and find zero lash again by up-and-down play.${goes}`,
        restsOn: [],
      },
      { about: BUILD, step: 'adjuster', ...defined({ among: id }), answers, choices: choicesOf(band) },
    ),
  ];
}

export const bandSaid = ({ from, to }: Pick<Band, 'from' | 'to'>): string =>
  `${from === 0 ? '0' : bareInches(from)} to ${inches(to)}`;
