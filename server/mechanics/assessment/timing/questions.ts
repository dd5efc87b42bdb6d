import { SIDES } from '../../../../shared/sides.ts';
import { allowance, USUAL_CENTRELINE } from '../../kit/allowances.ts';
import { isAtLeast, isWithin } from '../../kit/within.ts';
import type { AssessedQuestion, Subject } from '../assessment.ts';
import { answersOf } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import type { Evidence, Side } from '../evidence.ts';
import type { HeldPeak } from './against-card.ts';
import { againstStop } from './against-stop.ts';
import { askedOnce, countingOf, differing } from './differ.ts';
import { durationOff } from './duration.ts';
import { LOBE_AGAIN } from './lobe-again.ts';
import { shiftSaid } from './pointer-said.ts';
import { APART, degrees, isOut, ofSide, stopFor, type TimingRead } from './readings.ts';
import { wholeCamAsked } from './whole-cam.ts';

/** A lobe that peaks outside of these is asked about. */
const USUAL = USUAL_CENTRELINE;
/** So near its own card a peak outside of the usual ones is that cam's. */
const BY_CARD = allowance('centreline-by-card');

const BUILD: Subject = { of: 'build' };
const about = (side: Side): Subject => ({ of: 'side', valve: side });

/** From the wrong side of its dead centre, or of the other lobe, a peak is where hardly any cam has one. */
function unusual(peak: HeldPeak, { answers }: Evidence): AssessedQuestion[] {
  const { side, centreline, mayBe } = peak;
  const usual = isAtLeast(centreline, USUAL.from) && isAtLeast(USUAL.to, centreline);
  if (usual || mayBe.some((advance) => isWithin(advance, BY_CARD))) return [];
  return [
    asked(
      {
        code: 'centreline-unusual',
        weight: 'strong',
        ask: 'Was each reading told from the right side of its dead centre, and on the right lobe?',
        size: `${degrees(centreline)}° is outside of the usual ${degrees(USUAL.from)} to ${degrees(USUAL.to)}.`,
        test: 'turn to the peak by the indicator, and look where the wheel stands.',
        restsOn: [],
      },
      {
        about: about(side),
        step: 'timing',
        answers,
        choices: [
          { code: 'not-found', label: 'Yes, each was', changes: 'The centreline counts as it was read.' },
          {
            code: 'found',
            label: 'No, one was told wrong',
            changes: 'The lobe is read again.',
            leadsTo: LOBE_AGAIN,
          },
        ],
      },
    ),
  ];
}

const POINTER: AssessedQuestion['answers'] = [
  { code: 'shifted', label: 'Yes, it was shifted first', changes: 'The lobe counts as it was read.' },
  { code: 'left', label: 'No, it was left', changes: 'The pointer’s error is taken off what was read.' },
];

/** The stop shows the pointer out, and nobody said whether it was shifted before the lobe was read. */
function pointer(read: TimingRead, { answers }: Evidence): AssessedQuestion | undefined {
  const last = SIDES.flatMap((side) => ofSide(read, side).at(-1) ?? []).filter(({ righted }) => !righted);
  const stop = last.map((peak) => stopFor(read, peak)).find((each) => isOut(each));
  if (!isOut(stop)) return undefined;
  // Either answer settles it: it is not doubted any more.
  return asked(
    {
      code: 'pointer-out',
      weight: 'strong',
      ask: 'Was the pointer shifted before the lobe was read?',
      size: `At the stop it was ${degrees(stop.correction)}° out.`,
      test: isOut(read.stops.at(-1))
        ? `${shiftSaid(stop)} of the stop, then read the lobe again.`
        : 'the stop reads alike both ways now: read the lobe again.',
      restsOn: [],
    },
    { about: BUILD, step: 'timing', answers, choices: POINTER },
  );
}

/** One cam turns both lobes: where one says early and the other late, one was read wrong or the card is another cam's. */
function apart(peaks: readonly HeldPeak[], { answers }: Evidence): AssessedQuestion[] {
  const [intake, exhaust] = SIDES.map((side) => peaks.find((peak) => peak.side === side));
  if (intake?.advance === undefined || exhaust?.advance === undefined) return [];
  if (Math.abs(intake.advance - exhaust.advance) <= APART) return [];
  const way = (advance: number) => `${degrees(advance)}° ${advance < 0 ? 'late' : 'early'}`;
  return [
    asked(
      {
        code: 'lobes-apart',
        weight: 'strong',
        ask: 'Were both lobes read on one cam, one wheel and one pointer, each against its own centreline on the card?',
        size: `Against the card the intake is ${way(intake.advance)} and the exhaust ${way(exhaust.advance)}; one cam moves both alike.`,
        test: 'read both again at equal drop, coming up to the lift in running direction each time.',
        restsOn: [],
      },
      {
        about: BUILD,
        step: 'timing',
        // Of these readings alone: read again they are asked about once more.
        among: `${intake.line}-${exhaust.line}`,
        answers,
        choices: answersOf('lobes-apart'),
      },
    ),
  ];
}

export interface TimingAsked {
  readonly pointer: AssessedQuestion | undefined;
  readonly pointerWas: string | undefined;
  /** Whether both lobes were read on one cam. */
  readonly apart: readonly AssessedQuestion[];
  readonly unusual: readonly AssessedQuestion[];
  readonly differ: readonly AssessedQuestion[];
  /** Which figures the card has. */
  readonly card: readonly AssessedQuestion[];
  readonly durations: readonly AssessedQuestion[];
  /** How far the pointer was out. */
  readonly pointers: readonly AssessedQuestion[];
  readonly all: readonly AssessedQuestion[];
}

/** @param told the peak of each lobe that counts, its pointer put right where that was said */
export function questionsOf(read: TimingRead, told: readonly HeldPeak[], evidence: Evidence): TimingAsked {
  const ofPointer = pointerAsked(read, evidence);
  const ofUnusual = told.flatMap((peak) => unusual(peak, evidence));
  const ofCard = told.flatMap(({ cardAsked }) => cardAsked ?? []);
  const ofPointers = SIDES.flatMap((side) => countingOf(read, side, evidence) ?? []).flatMap(
    (peak) => againstStop(peak, read.stops, evidence)?.question ?? [],
  );
  const ofDurations = told.flatMap((peak) => durationOff(peak, evidence));
  const ofDiffer = SIDES.flatMap((side) => differing(read, side, evidence));
  const ofApart = apart(told, evidence);
  return {
    ...ofPointer,
    apart: ofApart,
    unusual: ofUnusual,
    differ: ofDiffer,
    card: ofCard,
    durations: ofDurations,
    pointers: ofPointers,
    all: [
      ...ofCard,
      ...ofPointers,
      ...ofUnusual,
      ...askedOnce(ofDiffer),
      ...ofDurations,
      ...(ofPointer.pointer === undefined ? [] : [ofPointer.pointer]),
      ...ofApart,
      ...wholeCamAsked(read, evidence),
    ],
  };
}

export function pointerAsked(
  read: TimingRead,
  evidence: Evidence,
): Pick<TimingAsked, 'pointer' | 'pointerWas'> {
  const question = pointer(read, evidence);
  return {
    pointer: question,
    pointerWas: question === undefined ? undefined : chosenOf(question),
  };
}
