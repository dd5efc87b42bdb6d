import { defined } from '../../../../shared/defined.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { USUAL_PRELOADS } from '../../setting/setting-table.ts';
import { seatPerAdvance } from '../../threads/adjuster-screw.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { turned } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { BUILD, type KeptSet } from '../common/kept.ts';
import { bareInches, inches } from '../common/said.ts';
import type { PreloadEvidence, SetEvidence, TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Evidence } from '../evidence.ts';
import { pastBottom, preloadWithin, short } from './said.ts';

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

const choicesOf = ({ wanted }: Band, changes: string, todo: string): AssessedQuestion['answers'] => [
  {
    code: 'not-found',
    label: wanted ? 'Yes, it is meant' : 'Yes, its maker asks for it',
    changes: 'The turns count.',
  },
  { code: 'found', label: 'No', changes, leadsTo: turned(todo) },
];

const AGAIN = 'Zero lash is looked for again, and the turns are worked out again.';
const FIND_AGAIN = 'find zero lash again by up-and-down play';

/** A pedestal’s bolt goes to its stop: what it stands on and the pushrod’s length set the preload. */
const isFixed = ({ engine }: Evidence): boolean => engine.mounting === 'pedestal';

/**
 * What brings the preload of a pedestal to the middle of its band: a shim under it raises the pivot, and its seat by so
 * much and what the lever adds; a pushrod changes it by its own length.
 */
function ofHeight({ ratio, preload = 0 }: Pressing, { from, to }: Band): string {
  const off = preload - (from + to) / 2;
  const shim = inches(Math.abs(off) / seatPerAdvance('stud-nut', ratio));
  return off > 0
    ? `put a shim of about ${shim} under the pedestal or take a pushrod about ${inches(off)} shorter, then count the turns to the bolt’s stop again.`
    : `take a shim of about ${shim} from under the pedestal, if one is there, or a pushrod about ${inches(-off)} longer, then count the turns to the bolt’s stop again.`;
}

const HEIGHT = 'A pedestal’s bolt goes to its stop: a shim or another pushrod sets the preload.';

/** Past the band: how near turns are counted does not make it less. One on its bottom has a question of its own. */
export function isOverBand(set: Pressing, { to }: Pick<Band, 'to'>): boolean {
  if (set.of === 'turns') return set.lifter === 'hydraulic' && (set.preload ?? 0) > to + EQUAL;
  const isTold = set.solid === true || set.travelUnsaid === true || pastBottom(set) !== undefined;
  return !isTold && set.preload > set.to + EQUAL;
}

/** Short of the band by more than turns are counted to; left where it is the plunger may come against its clip. */
const isUnderBand = (set: SetEvidence): set is PreloadEvidence =>
  set.of === 'preload' && set.solid !== true && set.preload < set.from - preloadWithin(set);

/** A preload under the band is asked of the lifter’s maker as well, and turned on to it. */
function underBandQuestions({ id, set }: KeptSet<SetEvidence>, evidence: Evidence): AssessedQuestion[] {
  if (!isUnderBand(set)) return [];
  const turns = `${short(set.from / (set.pitch * seatPerAdvance(set.mount, set.ratio)), 3)} turn`;
  const onTo = isFixed(evidence)
    ? ofHeight(set, set)
    : `let the lifter bleed down, ${FIND_AGAIN}, and turn on to the band: ${inches(set.from)} is ${turns} from zero. Its maker’s figure goes first.`;
  return [
    asked(
      {
        code: 'preload-under',
        weight: 'strong',
        ask: set.wanted
          ? 'Are these turns meant to stay under the band that is wanted?'
          : 'Does the lifter’s maker ask for so little preload?',
        size: `The plunger would be pressed ${inches(set.preload)}; ${bandSaid(set)} is ${set.wanted ? 'wanted' : 'usual'}.`,
        test: onTo,
        restsOn: [],
      },
      {
        about: BUILD,
        step: 'adjuster',
        ...defined({ among: id }),
        answers: evidence.answers,
        choices: choicesOf(set, isFixed(evidence) ? HEIGHT : AGAIN, onTo),
      },
    ),
  ];
}

/** A preload outside its band is asked of the lifter’s maker; what sets it is done again. */
export function bandQuestions(
  kept: KeptSet<SetEvidence>,
  told: Band,
  travel: number | undefined,
  evidence: Evidence,
): AssessedQuestion[] {
  return [...overBandQuestions(kept, told, travel, evidence), ...underBandQuestions(kept, evidence)];
}

/** Its zero is looked for again; where a fixed height sets it, the height is changed. */
function overBandQuestions(
  { id, set }: KeptSet<SetEvidence>,
  told: Band,
  travel: number | undefined,
  evidence: Evidence,
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
        test: isFixed(evidence)
          ? `ask its maker. Where so much is not asked for: ${ofHeight(set, band)}${goes}`
          : `let the lifter bleed down and find zero lash again by up-and-down play.${goes}`,
        restsOn: [],
      },
      {
        about: BUILD,
        step: 'adjuster',
        ...defined({ among: id }),
        answers: evidence.answers,
        choices: isFixed(evidence)
          ? choicesOf(band, HEIGHT, ofHeight(set, band))
          : choicesOf(band, AGAIN, `${FIND_AGAIN}, and work the turns out again.`),
      },
    ),
  ];
}

export const bandSaid = ({ from, to }: Pick<Band, 'from' | 'to'>): string =>
  `${from === 0 ? '0' : bareInches(from)} to ${inches(to)}`;
