import { SIDES } from '../../../../shared/sides.ts';
import { isWithin } from '../../kit/within.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { done } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { keyOfFigures } from '../common/key-of-figures.ts';
import { listed } from '../common/said.ts';
import type { Evidence, Side } from '../evidence.ts';
import { APART, degrees, ofSide, type TimingRead } from './readings.ts';

/** A lobe that peaks elsewhere by the figures of a whole cam than the card on record has it. */
interface OffCard {
  readonly side: Side;
  readonly centreline: number;
  readonly card: number;
}

/** Figures of a whole cam are a card’s, and hold nothing against it; read on the wheel they are kept as events. */
const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'They were read on the wheel',
    changes: 'Each lobe is kept by its own events: there it is held against the card.',
    leadsTo: done('keep the events of that lobe by themselves: there they are held against the card.'),
  },
  {
    code: 'not-found',
    label: 'They are of a card',
    changes: 'Nothing is held against them; the card on record is put right where it is the wrong one.',
  },
];

function offCard(whole: Readonly<Record<Side, number>>, read: TimingRead, { card }: Evidence): OffCard[] {
  return SIDES.flatMap((side) => {
    const [centreline, ofCard] = [whole[side], card[side].centreline];
    if (ofCard === undefined || isWithin(centreline - ofCard, APART)) return [];
    const isRead = ofSide(read, side).some((peak) => isWithin(peak.centreline - centreline, APART));
    return isRead ? [] : [{ side, centreline, card: ofCard }];
  });
}

/** The newest sum of a whole cam, where a lobe of it stands off the card on record and was not kept as a reading. */
export function wholeCamAsked(read: TimingRead, evidence: Evidence): AssessedQuestion[] {
  const newest = evidence.workings
    .filter(({ wholeCam }) => wholeCam !== undefined)
    .toSorted((a, b) => a.line - b.line)
    .at(-1);
  if (newest?.wholeCam === undefined) return [];
  const off = offCard(newest.wholeCam, read, evidence);
  if (off.length === 0) return [];
  const where = ({ side, centreline, card }: OffCard) =>
    `the ${side} peaks ${degrees(centreline)}° ${side === 'intake' ? 'after' : 'before'} TDC, where the card on record has ${degrees(card)}°`;
  return [
    asked(
      {
        code: 'whole-cam-off-card',
        weight: 'strong',
        ask: 'Are these figures of the whole cam a card’s, or were they read on the wheel?',
        size: `By them ${listed(off.map(where))}.`,
        test: 'say where they come from: as figures of a whole cam they are held against nothing.',
        byLooking: true,
        restsOn: [],
      },
      {
        about: { of: 'build' },
        step: 'timing',
        among: off.map(({ side, centreline, card }) => keyOfFigures(side, centreline, card)).join('-'),
        answers: evidence.answers,
        choices: CHOICES,
      },
    ),
  ];
}
