import { goesSolidFirst, springsOf } from '../../springs/nested.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked, inDoubt } from '../common/asked.ts';
import { overlapSaid } from '../common/gap-said.ts';
import { toSay } from '../common/lack.ts';
import { inches, nominalSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { ChangeDetail, ChangeGap } from './detail.ts';
import { worstFirst } from './worst-first.ts';

/** The question whether the heights of the springs were read right. */
export const BINDS_ALREADY = 'springs-bind-already';

/** That they were read right is an answer that leaves the figures standing; words of their own, since a yes says either. */
const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'not-found',
    label: 'They were read right',
    changes: 'They count: by them the spring goes solid before full lift, and what is short is short.',
  },
  {
    code: 'found',
    label: 'One of them was off',
    changes: 'What is calculated from them has no word until it is put right where it was entered.',
  },
];

type Worked = Pick<ChangeDetail, 'about' | 'before' | 'gaps'>;

const bindOf = ({ gaps }: Pick<Worked, 'gaps'>): ChangeGap['before'] =>
  gaps.find(({ name }) => name === 'coil-bind')?.before;

/** A lift that it is worked out from waits for an answer: it says nothing of the heights of the springs. */
const isLiftDoubted = ({ gaps }: Pick<Worked, 'gaps'>): boolean =>
  gaps.some(({ name, lacks }) => name === 'coil-bind' && lacks.some(({ code }) => code === 'answer'));

/** By the heights as entered the coils would touch with the ratio that was there already. */
function bindsAlready(detail: Worked): boolean {
  const before = bindOf(detail);
  const binds = before?.basis === 'calculated' && before.value !== undefined && before.value < 0;
  return binds && !isLiftDoubted(detail);
}

/** An engine that ran is one whose springs did not bind: one of the two heights was read wrong, or the ratio was another. */
const ran = ({ call }: Evidence): boolean => call.engineState === 'runs' || call.engineState === 'has-run';

/** Heights by which the springs would bind before anything is changed are asked first. */
export function springsAsked(evidence: Evidence, details: readonly Worked[]): AssessedQuestion[] {
  const worst = details
    .filter(bindsAlready)
    .toSorted((a, b) => (bindOf(a)?.value ?? 0) - (bindOf(b)?.value ?? 0))[0];
  const gap = worst === undefined ? undefined : bindOf(worst);
  if (worst?.before === undefined || gap === undefined) return [];
  const { nest } = evidence.springs;
  const first = nest && goesSolidFirst(nest);
  // Of a nest the heights are those of the one that binds.
  const { installedHeight, solidHeight } =
    nest === undefined || first === undefined
      ? evidence.springs
      : springsOf(nest)[first === 'both' ? 'outer' : first];
  const of = first === undefined || first === 'both' ? 'the springs' : `the ${first} springs`;
  if (installedHeight === undefined || solidHeight === undefined) return [];
  const has = ran(evidence);
  return [
    asked(
      {
        code: BINDS_ALREADY,
        weight: has ? 'strong' : 'weak',
        ask: `Were installed height and coil-bind height of ${of} read right? With them the spring would go solid before anything is changed.`,
        size: `Installed ${inches(installedHeight)}, coil-bind ${inches(solidHeight)}: with ${nominalSaid(worst.before.value)} it would go solid ${overlapSaid(gap)} before full lift.${has ? ' The engine ran with them.' : ''}`,
        test: 'With nothing turned: take both heights once more, installed with seat, shims, retainer and locks as fitted, and coil-bind of each spring of a nest by itself.',
        byLooking: true,
        restsOn: [],
      },
      { about: { of: 'build' }, step: 'consequences', answers: evidence.answers, choices: CHOICES },
    ),
  ];
}

const HELD = toSay(
  'spring-heights',
  'the right installed height and coil-bind height: by what was entered the springs would bind with the ratio before already',
  BINDS_ALREADY,
);

function held(gap: ChangeGap): ChangeGap {
  if (gap.name !== 'coil-bind' || gap.after?.basis !== 'calculated') return gap;
  const { word: _, ...open } = gap;
  return { ...open, lacks: [HELD] };
}

/** While the heights are in doubt nothing that is calculated from them has a word. */
export function untilSpringsAreSure<Detail extends Pick<ChangeDetail, 'gaps'>>(
  details: readonly Detail[],
  questions: readonly AssessedQuestion[],
): Detail[] {
  if (!questions.some(inDoubt)) return [...details];
  return details.map((detail) => ({ ...detail, gaps: worstFirst(detail.gaps.map(held)) }));
}
