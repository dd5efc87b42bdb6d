import { defined } from '../../../../shared/defined.ts';
import { CAN_BE } from '../../../../shared/schemas/can-be.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { unlikelyLash } from '../../lash/lash-slips.ts';
import { USUAL_TRAVEL } from '../../setting/usual-travel.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { inches } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { PreloadEvidence, SetEvidence, TurnsEvidence } from './evidence.ts';
import { BUILD, type KeptSet } from './kept.ts';
import { countSaid } from './said.ts';

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'No, it was entered wrong',
    changes: 'The sum is kept again with the right figure.',
  },
  { code: 'not-found', label: 'Yes, it is so', changes: 'The question is settled, and the sum counts.' },
];

interface Unlikely {
  readonly ask: string;
  readonly size: string;
  readonly test: string;
}

/** More turns than most plungers have travel for, where nobody said how far these go. */
function farPressed(turns: number, pressed: number | undefined, travel?: number): Unlikely | undefined {
  if (pressed === undefined || travel !== undefined || pressed <= USUAL_TRAVEL + EQUAL) return undefined;
  return {
    ask: `Was it really turned ${countSaid(turns)} past zero lash?`,
    size: `That presses the plunger ${inches(pressed)}; most go ${inches(USUAL_TRAVEL)} at the most, and one on its bottom holds the valve open.`,
    test: 'count the turns again from what was written down, and ask the lifter’s maker how far its plunger goes.',
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

const ofTurns = (
  { lifter, turns, preload, lashFound, lashWanted }: TurnsEvidence,
  travel: number | undefined,
): Unlikely[] =>
  [
    lifter === 'hydraulic' ? farPressed(turns, preload, travel) : undefined,
    farLash('found', lashFound),
    farLash('wanted', lashWanted),
  ].flatMap((each) => each ?? []);

/** One on its bottom is stopped already, with a question of its own. */
const ofPreload = ({ turns, preload, travel }: PreloadEvidence): Unlikely[] =>
  [farPressed(turns, preload, travel)].flatMap((each) => each ?? []);

function unlikelyIn(set: SetEvidence, travel: number | undefined): Unlikely[] {
  if (set.of === 'turns') return ofTurns(set, travel);
  return set.of === 'preload' ? ofPreload(set) : [];
}

/** What hardly can be of a sum that was kept: asked, and the sum is not told until then. */
export const unlikelyQuestions = (
  { id, set }: KeptSet,
  travel: number | undefined,
  { answers }: Evidence,
): AssessedQuestion[] =>
  unlikelyIn(set, travel).map((found) =>
    asked(
      { ...found, code: 'sum-unlikely', weight: 'strong', byLooking: true, restsOn: [] },
      { about: BUILD, step: 'adjuster', ...defined({ among: id }), answers, choices: CHOICES },
    ),
  );
