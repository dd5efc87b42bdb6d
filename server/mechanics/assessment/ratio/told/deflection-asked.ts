import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { usualDeflection } from '../../../kit/allowances.ts';
import { againstUsual } from '../../../ratio-readings/deflection.ts';
import type { AnswerChoice, AssessedQuestion } from '../../assessment.ts';
import { asked } from '../../common/asked.ts';
import { beforeNamed } from '../../common/named-late.ts';
import { inches, placeOf, valveSubject } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import type { GroupExplained } from '../compared/explain.ts';

const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'found',
    label: 'Lash was in, or the zero had moved',
    changes: 'That is put right in its set-up, or the reading is struck out and read again.',
  },
  {
    code: 'not-found',
    label: 'Looked: lash out on both, and the zero came back',
    changes: 'The spring takes as much: it stays as it was read.',
  },
];

interface Taken {
  readonly lift: number;
  readonly half: number;
  readonly restsOn: readonly string[];
}

/** With the lash of the card taken out of it the spring takes what is usual. */
function lashSaid(evidence: Evidence, { group }: GroupExplained, { lift, half }: Taken): string | undefined {
  const { lash } = evidence.card[sideOfValve(group.valve)];
  if (lash === undefined || lash <= 0) return undefined;
  const usual = usualDeflection(evidence.engine.mounting);
  return againstUsual(lift - lash, half, usual) === 'usual'
    ? `Less the ${inches(lash)} of lash on the card it is ${inches(lift - lash)}, which is usual.`
    : undefined;
}

/** The running spring takes more than is usual: lash, zero and springs are asked about before it is called flex. */
export function deflectionAsked(
  evidence: Evidence,
  explained: GroupExplained,
  taken: Taken,
): AssessedQuestion[] {
  const { group } = explained;
  if (againstUsual(taken.lift, taken.half, usualDeflection(evidence.engine.mounting)) !== 'more') return [];
  return [
    asked(
      {
        code: 'deflection-more-than-usual',
        weight: 'strong',
        ask: `The running spring takes ${inches(taken.lift)} on ${placeOf(group)}, more than usual. Was the lash out on both springs, and did the dial come back to zero?`,
        knownBy: 'more than a running spring usually takes',
        ...defined({ size: lashSaid(evidence, explained, taken) }),
        test: 'Ask whether the lash was taken up to zero on both springs; then see that the dial comes back to zero and its base does not give.',
        testAtBench:
          'Say whether the lash was taken up to zero on both springs; then see that the dial comes back to zero and its base does not give.',
        restsOn: taken.restsOn,
      },
      {
        about: valveSubject(group),
        step: 'ratio',
        answers: evidence.answers,
        choices: CHOICES,
        ...defined({ among: group.armId }),
        ...beforeNamed(
          group.armId,
          group.own.flatMap(({ standing }) => standing),
        ),
      },
    ),
  ];
}
