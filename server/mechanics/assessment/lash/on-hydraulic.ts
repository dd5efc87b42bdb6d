import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import type { ValveGear } from '../../../../shared/schemas/words.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { lashSaid } from '../common/gap-said.ts';
import { isLashDoubted } from '../common/lash-doubt.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { Bounds, Evidence, LashEvidence, ValvePlace } from '../evidence.ts';

/** The question how its lifter stood. */
export const ON_HYDRAULIC = 'gap-on-hydraulic';

/** What takes up the gap by its oil, and what a gap at it says, by valve gear. */
interface Hydraulic {
  readonly named: string;
  readonly pressed: string;
  readonly test: string;
  /** What follows where its plunger could be pressed down, and where it was full: as an answer, and as it is told. */
  readonly down: readonly [string, string];
  readonly up: readonly [string, string];
  readonly lack: string;
}

const LIFTER: Hydraulic = {
  named: 'lifter',
  pressed: 'A hydraulic lifter has preload and no lash',
  test: 'Press the arm down on the lifter’s side by hand: a plunger that can be pressed down gives, and one that is full of oil stays.',
  down: [
    'It is plunger travel and no lash: zero is looked for by up-and-down play, and the preload set from there.',
    'plunger travel and no lash. What counts is its preload, in turns from zero lash.',
  ],
  up: [
    'The adjuster is out by that gap: why it came out is looked for before it is set.',
    'the lifter was full, so the adjuster is out by that. Look why before it is set.',
  ],
  lack: 'a preload: a gap with the plunger pressed down is no lash',
};

const NO_TURN = 'no turn sets it. The engine maker’s own check tells, in a qualified shop.';
const PIVOT: Hydraulic = {
  named: 'pivot',
  pressed: 'A hydraulic pivot takes up the lash by itself',
  test: 'Press the arm down on the pivot’s side by hand: a plunger that can be pressed down gives, and one that is full of oil stays.',
  down: ['It is plunger travel and no lash: no turn sets it.', `plunger travel and no lash, and ${NO_TURN}`],
  up: [
    'A full pivot should have taken it up: a qualified shop looks at its height, the follower and the valve.',
    'the pivot was full, and should have taken that up. A qualified shop looks at its fitting height, the follower and the valve, against the engine maker’s figures.',
  ],
  lack: 'a gap with the pivot full of oil: one with its plunger pressed down is no lash',
};
const BUCKET: Hydraulic = {
  ...PIVOT,
  named: 'bucket',
  pressed: 'A hydraulic bucket takes up the lash by itself',
  test: 'Press the bucket down by hand with its lobe up: a plunger that can be pressed down gives, and one that is full of oil stays.',
  up: [
    'A full bucket should have taken it up: a qualified shop looks at bucket, lobe and valve.',
    'the bucket was full, and should have taken that up. A qualified shop looks at bucket, lobe and valve, against the engine maker’s figures.',
  ],
  lack: 'a gap with the bucket full of oil: one with its plunger pressed down is no lash',
};

/** Source: how each valve gear is made, general knowledge from memory, no published source. */
const OF_GEAR: Readonly<Record<ValveGear, Hydraulic>> = {
  pushrod: LIFTER,
  'finger-follower': PIVOT,
  'cam-rocker': PIVOT,
  bucket: BUCKET,
};

const hydraulicOf = ({ engine: { gear = 'pushrod' } }: OfEngine): Hydraulic => OF_GEAR[gear];

type OfEngine = Pick<Evidence, 'engine'>;

const choicesOf = ({ down, up }: Hydraulic): AssessedQuestion['answers'] => [
  { code: 'pressed-down', label: 'Hydraulic, and the plunger could be pressed down', changes: down[0] },
  { code: 'pumped-up', label: 'Hydraulic, full of oil, and there was a gap all the same', changes: up[0] },
  {
    code: 'solid',
    label: 'They are solid lifters',
    changes: 'The lifters are put right in the description of the engine; then it is a lash.',
  },
];

/** The newest line of a valve. */
interface Found extends ValvePlace {
  readonly lines: readonly LashEvidence[];
  readonly newest: Bounds;
}

/**
 * A gap that was found at a hydraulic lifter is no lash: with the plunger pressed down it is the plunger's own travel, and
 * with it up against its clip the adjuster stands out by so much. Common practice, no published source.
 */
export function foundOnHydraulic(
  { lines, newest, ...place }: Found,
  evidence: Evidence,
): AssessedQuestion | undefined {
  const line = lines.at(-1);
  const { value, low = value } = newest;
  const isHydraulic = isHydraulicLifter(evidence.engine.lifter);
  if (!isHydraulic || line?.moment !== 'found' || low === undefined || low <= EQUAL) return undefined;
  if (isLashDoubted(evidence, line)) return undefined;
  const words = hydraulicOf(evidence);
  const raised = asked(
    {
      code: ON_HYDRAULIC,
      weight: 'strong',
      ask: `How did the ${words.named} of ${placeOf(place)} stand when its gap was found?`,
      knownBy: 'how did the lifter stand when its gap was found',
      size: `${words.pressed}; ${lashSaid(newest)} was found there.`,
      test: words.test,
      byLooking: true,
      restsOn: [line.id],
    },
    {
      about: valveSubject(place),
      step: 'adjuster',
      among: line.id,
      answers: evidence.answers,
      choices: choicesOf(words),
    },
  );
  return raised;
}

/** The gap says something of the adjuster: the lifter was full, or is not hydraulic at all. */
export const tellsOfAdjuster = (question: AssessedQuestion | undefined): boolean =>
  question === undefined || chosenOf(question) === 'pumped-up';

/** What its figure lacks, by what was answered. */
export function hydraulicLack(question: AssessedQuestion | undefined, evidence: OfEngine): string[] {
  if (question === undefined || tellsOfAdjuster(question)) return [];
  const chosen = chosenOf(question);
  if (chosen === 'pressed-down') return [hydraulicOf(evidence).lack];
  return chosen === 'solid'
    ? ['the lifters put right in the description of the engine: solid, as was answered']
    : [`how its hydraulic ${hydraulicOf(evidence).named} stood`];
}

/** What is told first of such a valve. */
export function hydraulicSaid(
  place: ValvePlace,
  newest: Bounds,
  question: AssessedQuestion,
  evidence: OfEngine,
): string {
  const { down, up } = hydraulicOf(evidence);
  const at = `${placeOf(place)}, ${lashSaid(newest)}`;
  switch (chosenOf(question)) {
    case 'pressed-down':
      return `Gap of ${at}: ${down[1]}`;
    case 'pumped-up':
      return `Gap of ${at}: ${up[1]}`;
    case 'solid':
      return `Gap of ${at}: the lifters are solid, as was answered. Put them right in the description of the engine.`;
    default:
      return `No lash of ${placeOf(place)} counts yet. ${question.ask}`;
  }
}
