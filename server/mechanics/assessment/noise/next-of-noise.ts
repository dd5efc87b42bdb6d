import type { AssessedQuestion, NextAction, Subject } from '../assessment.ts';
import { valveSubject } from '../common/said.ts';
import { questionNext } from '../next/question-next.ts';
import { asItStands, comesFirst, readAtLast } from './checks.ts';
import type { NoiseCheck, NoiseDetail } from './detail.ts';

/** What a call about noise asks for next, in the places where it comes among what else is next. */
export interface NextOfNoise {
  /** Asked or seen as it stands: before anything is turned. */
  readonly ask: NextAction | undefined;
  /** The gap as it is found, and then what is seen with parts off. */
  readonly look: NextAction | undefined;
  /** Read at last, with the engine turned. */
  readonly read: NextAction | undefined;
  /** An adjuster had moved: it was set since and nobody looked, or nobody has said yet why it moved. */
  readonly again: NextAction | undefined;
  readonly why: NextAction | undefined;
}

const REASONS: Readonly<Record<string, string>> = {
  'noise-signs': 'Damage is asked after before everything else.',
  'noise-which': 'What was read counts by which valve it is.',
  lifter: 'A hydraulic lifter has no lash to read, and a solid one has.',
  lash: 'A part that comes off takes the gap with it as it was found.',
  touching: 'Coils that touch, or a valve that meets its piston, bend pushrods.',
  lobe: 'Lash is read on the base circle, where a worn nose never shows.',
};

const reasonOf = ({ code }: NoiseCheck): string =>
  REASONS[code] ?? 'Of all that can be asked or seen now, it tells the most causes apart.';

function actionOf(detail: NoiseDetail, check: NoiseCheck | undefined): NextAction | undefined {
  if (check === undefined) return undefined;
  const { code, step, sentence, turns } = check;
  const about: Subject = detail.place === undefined ? { of: 'build' } : valveSubject(detail.place);
  return { id: `next:noise:${code}`, action: code, step, about, sentence, reason: reasonOf(check), turns };
}

/**
 * @param contrary what was answered one way and the record has another way
 * @param oil what is put right before anything is read
 */
export function nextOfNoise(
  detail: NoiseDetail,
  contrary: readonly AssessedQuestion[] = [],
  oil?: NextAction,
): NextOfNoise {
  const { active, checks, moved } = detail;
  const first = (fits: (check: NoiseCheck) => boolean) =>
    active ? actionOf(detail, checks.find(fits)) : undefined;
  const contradicted = questionNext(contrary);
  return {
    // Damage and what the engine has are asked first; the rest counts by what was contradicted.
    ask: first(comesFirst) ?? contradicted ?? first(asItStands) ?? oil,
    look: first((check) => !readAtLast(check) && !asItStands(check)),
    read: first(readAtLast),
    again: active ? moved?.again : undefined,
    why: active ? moved?.why : undefined,
  };
}
