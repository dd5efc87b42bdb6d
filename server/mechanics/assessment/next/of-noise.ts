import { defined } from '../../../../shared/defined.ts';
import type { AssessedQuestion, EnteredAt, NextAction, Subject } from '../assessment.ts';
import { valveSubject } from '../common/said.ts';
import { asItStands, comesFirst, readAtLast } from '../noise/checks.ts';
import type { NoiseCheck, NoiseDetail } from '../noise/detail.ts';
import { questionNext } from './question-next.ts';

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
  'seat-looked':
    'A gap that closed with its lock where it was speaks for valve and seat before anything that wears.',
  lifter: 'A hydraulic lifter has no lash to read, and a solid one has.',
  mounting: 'What can have come loose goes by that: a stud has its nut, a shaft its stands.',
  lash: 'A part that comes off takes the gap with it as it was found.',
  touching: 'Coils that touch, or a valve that meets its piston, bend pushrods.',
  lobe: 'Lash is read on the base circle, where a worn nose never shows.',
};

/** Which causes it tells apart: the two that stand first, and how many pairs beside them. */
function reasonOf({ code, apart, pairs }: NoiseCheck, { candidates }: NoiseDetail): string {
  const own = REASONS[code];
  if (own !== undefined) return own;
  const [one, other] = (apart ?? []).map((cause) => candidates.find((each) => each.cause === cause)?.said);
  if (one === undefined || other === undefined) return MOST;
  return `It tells ${one} from ${other}${pairs > 1 ? `; ${pairs} pairs of causes in all` : ''}.`;
}

const MOST = 'Of all that can be asked or seen now, it tells the most causes apart.';

/** What the engine has is entered with it, in a field of its own. */
const ENTERED_AT: Readonly<Partial<Record<string, EnteredAt>>> = {
  lifter: { field: 'engine.lifter' },
  mounting: { field: 'engine.rockerMounting' },
};

function actionOf(detail: NoiseDetail, check: NoiseCheck | undefined): NextAction | undefined {
  if (check === undefined) return undefined;
  const { code, step, sentence, turns } = check;
  const about: Subject = detail.place === undefined ? { of: 'build' } : valveSubject(detail.place);
  return {
    id: `next:noise:${code}`,
    action: code,
    step,
    about,
    sentence,
    reason: reasonOf(check, detail),
    ...defined({ at: ENTERED_AT[code] }),
    turns,
  };
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
