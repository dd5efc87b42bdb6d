import { defined } from '../../../../shared/defined.ts';
import { CAN_BE } from '../../../../shared/schemas/can-be.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { unlikelyLash } from '../../lash/lash-slips.ts';
import { USUAL_TRAVEL } from '../../setting/usual-travel.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { BUILD, type KeptSet } from '../common/kept.ts';
import { inches } from '../common/said.ts';
import type { SetEvidence, TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Evidence } from '../evidence.ts';
import { countSaid } from './said.ts';
import { SUM_AGAIN } from './sum-again.ts';

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'No, it was entered wrong',
    changes: 'The sum is kept again with the right figure.',
    leadsTo: SUM_AGAIN,
  },
  { code: 'not-found', label: 'Yes, it is so', changes: 'The question is settled, and the sum counts.' },
];

interface Unlikely {
  readonly ask: string;
  readonly size: string;
  readonly test: string;
}

/** A preload that is wanted, and that most plungers have no travel for, where nobody said how far these go. */
function farPressed({ byPreload, preload }: TurnsEvidence, travel?: number): Unlikely | undefined {
  if (byPreload !== true || preload === undefined || travel !== undefined) return undefined;
  if (preload <= USUAL_TRAVEL + EQUAL) return undefined;
  return {
    ask: `Is a preload of ${inches(preload)} really wanted?`,
    size: `Most plungers go ${inches(USUAL_TRAVEL)} at the most, and one on its bottom holds the valve open.`,
    test: 'look at what was written down, and ask the lifter’s maker for the preload and how far its plunger goes.',
  };
}

/** Backed off so far that a gap is left which hardly any valve has. */
function farOpened(set: TurnsEvidence, hasPushrods: boolean): Unlikely | undefined {
  const { turns, lashFound, lashChange, preload = 0, ratio } = set;
  const opened = lashFound === undefined ? (lashChange ?? -preload * ratio) : 0;
  // A plunger that is backed off to look for zero stands out further than a solid lifter’s gap is ever set.
  const isFar =
    lashChange === undefined ? opened > CAN_BE.lash.most + EQUAL : unlikelyLash(opened) === 'wide';
  if (!isFar) return undefined;
  return {
    ask: `Is the adjuster really to be backed off ${countSaid(turns)}?`,
    size: `That opens the gap by ${inches(opened)}; ${hasPushrods ? 'with so much of a gap a pushrod can leave its cup' : 'so wide a gap is hardly ever set, and is heard'}.`,
    test: 'count the turns again from what was written down, and say whether they tighten or loosen.',
  };
}

/** A lash that hardly any valve has. */
function farLash(name: 'found' | 'wanted', lash: number | undefined): Unlikely | undefined {
  const which = lash === undefined ? undefined : unlikelyLash(lash);
  if (lash === undefined || which === undefined) return undefined;
  const { usual } = CAN_BE.lash;
  return {
    ask: `Is the lash ${name} really ${inches(lash)}?`,
    size: usual === undefined ? '' : `From ${inches(usual.least)} to ${inches(usual.most)} is usual.`,
    test: 'look at what was written down, and whether it was inches or millimetres.',
  };
}

const ofTurns = (set: TurnsEvidence, travel: number | undefined, hasPushrods: boolean): Unlikely[] =>
  [
    farPressed(set, travel),
    farOpened(set, hasPushrods),
    farLash('found', set.lashFound),
    farLash('wanted', set.lashWanted),
  ].flatMap((each) => each ?? []);

/** Turns that were counted stop it where they go too far, with a question of their own. */
const unlikelyIn = (
  set: SetEvidence,
  travel: number | undefined,
  { gear = 'pushrod' }: Evidence['engine'],
) => (set.of === 'turns' ? ofTurns(set, travel, gear === 'pushrod') : []);

/** What hardly can be of a sum that was kept: asked, and the sum is not told until then. */
export const unlikelyQuestions = (
  { id, set }: KeptSet,
  travel: number | undefined,
  { answers, engine }: Evidence,
): AssessedQuestion[] =>
  unlikelyIn(set, travel, engine).map((found) =>
    asked(
      { ...found, code: 'sum-unlikely', weight: 'strong', byLooking: true, restsOn: [] },
      { about: BUILD, step: 'adjuster', ...defined({ among: id }), answers, choices: CHOICES },
    ),
  );
