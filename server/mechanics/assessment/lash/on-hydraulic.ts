import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { gapSaid } from '../common/gap-said.ts';
import { isLashDoubted } from '../common/lash-doubt.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { Bounds, Evidence, LashEvidence, ValvePlace } from '../evidence.ts';

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'pressed-down',
    label: 'Hydraulic, and the plunger could be pressed down',
    changes:
      'It is plunger travel and no lash: zero is looked for by up-and-down play, and the preload set from there.',
  },
  {
    code: 'pumped-up',
    label: 'Hydraulic, full of oil, and there was a gap all the same',
    changes: 'The adjuster is out by that gap: why it came out is looked for before it is set.',
  },
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
  const raised = asked(
    {
      code: 'gap-on-hydraulic',
      weight: 'strong',
      ask: `How did the lifter of ${placeOf(place)} stand when its gap was found?`,
      knownBy: 'how did the lifter stand when its gap was found',
      size: `A hydraulic lifter has preload and no lash; ${gapSaid(newest)} was found there.`,
      test: 'Press the arm down on the lifter’s side by hand: a plunger that can be pressed down gives, and one that is full of oil stays.',
      byLooking: true,
      restsOn: [line.id],
    },
    {
      about: valveSubject(place),
      step: 'adjuster',
      among: line.id,
      answers: evidence.answers,
      choices: CHOICES,
    },
  );
  return raised;
}

/** The gap says something of the adjuster: the lifter was full, or is not hydraulic at all. */
export const tellsOfAdjuster = (question: AssessedQuestion | undefined): boolean =>
  question === undefined || chosenOf(question) === 'pumped-up';

/** What its figure lacks, by what was answered. */
export function hydraulicLack(question: AssessedQuestion | undefined): string[] {
  if (question === undefined || tellsOfAdjuster(question)) return [];
  const chosen = chosenOf(question);
  if (chosen === 'pressed-down') return ['a preload: a gap with the plunger pressed down is no lash'];
  return chosen === 'solid'
    ? ['the lifters put right in the description of the engine: solid, as was answered']
    : ['how its hydraulic lifter stood'];
}

/** What is told first of such a valve. */
export function hydraulicSaid(place: ValvePlace, newest: Bounds, question: AssessedQuestion): string {
  const at = `${placeOf(place)}, ${gapSaid(newest)}`;
  switch (chosenOf(question)) {
    case 'pressed-down':
      return `Gap of ${at}: plunger travel and no lash. What counts is its preload, in turns from zero lash.`;
    case 'pumped-up':
      return `Gap of ${at}: the lifter was full, so the adjuster is out by that. Look why before it is set.`;
    case 'solid':
      return `Gap of ${at}: the lifters are solid, as was answered. Put them right in the description of the engine.`;
    default:
      return `No lash of ${placeOf(place)} counts yet. ${question.ask}`;
  }
}
