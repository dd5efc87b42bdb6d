import { defined } from '../../../../shared/defined.ts';
import { allowance } from '../../kit/allowances.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { keyOfFigures } from '../common/key-of-figures.ts';
import type { Evidence, PeakEvidence } from '../evidence.ts';
import { degrees, type Lined } from './degrees.ts';

/** A lobe's peak, held against what the card says now. */
export interface HeldPeak extends Lined<PeakEvidence> {
  /** Earlier than the card; negative later. Nothing while nobody knows what the card says. */
  readonly advance?: number;
  /** All that it may be while that is asked. */
  readonly mayBe: readonly number[];
  /** Its duration less that of the card, where it was read by its events. */
  readonly durationOver?: number;
  /** The card of the build is not the one that it was held against. */
  readonly cardAsked?: AssessedQuestion;
}

/** Nearer two figures of a card are one. */
const PRINTED = allowance('card-figure');

const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= PRINTED;

/** One figure of the card, as the build has it and as it was told with the reading. */
interface Figure {
  readonly name: string;
  readonly build: number;
  readonly reading: number;
}

/** The duration of the card that is nearest: nobody says with a reading at which lift it was taken. */
function nearestDuration({ side, duration }: PeakEvidence, { card }: Evidence): number | undefined {
  if (duration === undefined) return undefined;
  return (card[side].durations ?? [])
    .map((each) => each.duration)
    .toSorted((a, b) => Math.abs(a - duration) - Math.abs(b - duration))[0];
}

function otherFigures(peak: PeakEvidence, evidence: Evidence): Figure[] {
  const { centreline, durations = [] } = evidence.card[peak.side];
  const { card, cardDuration } = peak;
  const ofBuild = nearestDuration(peak, evidence);
  return [
    ...(card === undefined || centreline === undefined || isSame(card, centreline)
      ? []
      : [{ name: 'centreline', build: centreline, reading: card }]),
    ...(cardDuration === undefined ||
    ofBuild === undefined ||
    durations.some(({ duration }) => isSame(duration, cardDuration))
      ? []
      : [{ name: 'duration', build: ofBuild, reading: cardDuration }]),
  ];
}

const said = (figures: readonly Figure[], of: 'build' | 'reading'): string =>
  figures.map((each) => `${degrees(each[of])}°`).join(' and ');

/** The answer of these very figures: a card that is put right once more is asked about again. */
const known = (figures: readonly Figure[]): string =>
  figures.map(({ name, build, reading }) => keyOfFigures(name, build, reading)).join('-');

function askedOf(
  peak: Lined<PeakEvidence>,
  figures: readonly Figure[],
  { answers }: Evidence,
): AssessedQuestion {
  const named = figures.map(({ name }) => name).join(' and ');
  const [build, reading] = [said(figures, 'build'), said(figures, 'reading')];
  const question = asked(
    {
      code: 'card-differs',
      weight: 'strong',
      ask: `Which ${named} does the card give the ${peak.side}: ${build} or ${reading}?`,
      knownBy: 'card-differs',
      size: `The build has ${build}; the reading was held against ${reading}.`,
      test: 'look at the card that came with the cam.',
      byLooking: true,
      restsOn: [],
    },
    {
      about: { of: 'side', valve: peak.side },
      step: 'timing',
      among: `${peak.id}:${known(figures)}`,
      answers,
      choices: [
        {
          code: 'build',
          label: `${build}, as the build has it`,
          changes: 'What was read is held against that.',
        },
        {
          code: 'reading',
          label: `${reading}, as it was told with the reading`,
          changes: 'What was read counts against that; the card of the build is put right.',
        },
      ],
    },
  );
  // Either answer settles it: it is not doubted any more.
  return question;
}

/** Earlier is positive: an intake is told after top dead centre, an exhaust before it. */
const advanceOf = ({ side, centreline }: PeakEvidence, card: number): number =>
  side === 'intake' ? card - centreline : centreline - card;

/**
 * What the card makes of a peak. The card of the build counts; where another was told with the reading, nothing is told
 * until somebody has looked.
 *
 * Equation: advance = card − centreline (intake), centreline − card (exhaust); duration over = duration − card’s
 *
 * Source: common practice, no published source.
 */
export function held(peak: Lined<PeakEvidence>, evidence: Evidence): HeldPeak {
  const ofBuild = {
    card: evidence.card[peak.side].centreline,
    duration: nearestDuration(peak, evidence),
  };
  const figures = otherFigures(peak, evidence);
  const question = figures.length === 0 ? undefined : askedOf(peak, figures, evidence);
  const chosen = question === undefined ? 'reading' : chosenOf(question);
  const first = <Value>(build: Value | undefined, reading: Value | undefined): Value | undefined =>
    chosen === 'build' ? (build ?? reading) : (reading ?? build);
  const card = first(ofBuild.card, peak.card);
  const isOpen = question !== undefined && chosen === undefined;
  const isCardOpen = isOpen && figures.some(({ name }) => name === 'centreline');
  const duration = isOpen ? undefined : first(ofBuild.duration, peak.cardDuration);
  const all = isCardOpen ? [ofBuild.card, peak.card] : [card];
  return {
    ...peak,
    mayBe: all.flatMap((each) => (each === undefined ? [] : [advanceOf(peak, each)])),
    ...defined({
      advance: card === undefined || isOpen ? undefined : advanceOf(peak, card),
      durationOver:
        duration === undefined || peak.duration === undefined ? undefined : peak.duration - duration,
      cardAsked: question,
    }),
  };
}
