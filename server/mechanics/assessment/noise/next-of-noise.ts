import type { NextAction, Subject } from '../assessment.ts';
import { valveSubject } from '../common/said.ts';
import { asItStands } from './checks.ts';
import type { NoiseCheck, NoiseDetail } from './detail.ts';

/** What a call about noise asks for next, in the three places where it comes among what else is next. */
export interface NextOfNoise {
  /** Asked or seen as it stands: before anything is turned. */
  readonly ask: NextAction | undefined;
  /** The gap as it is found, and then what is seen with parts off. */
  readonly look: NextAction | undefined;
  /** Read at last, with the engine turned. */
  readonly read: NextAction | undefined;
}

const LOBE = 'lobe';

const REASONS: Readonly<Record<string, string>> = {
  'noise-signs': 'Damage is asked after before everything else.',
  'noise-which': 'What was read counts by which valve it is.',
  lash: 'A part that comes off takes the gap with it as it was found.',
  lobe: 'Lash is read on the base circle, where a worn nose never shows.',
};

const reasonOf = ({ code, pairs }: NoiseCheck): string =>
  REASONS[code] ??
  `Of what can be asked or seen now it parts most: ${pairs} ${pairs === 1 ? 'pair' : 'pairs'} of the causes that are left.`;

function actionOf(detail: NoiseDetail, check: NoiseCheck | undefined): NextAction | undefined {
  if (check === undefined) return undefined;
  const { code, step, sentence, turns } = check;
  const about: Subject = detail.place === undefined ? { of: 'build' } : valveSubject(detail.place);
  return { id: `next:noise:${code}`, action: code, step, about, sentence, reason: reasonOf(check), turns };
}

export function nextOfNoise(detail: NoiseDetail): NextOfNoise {
  const { active, checks } = detail;
  const first = (fits: (check: NoiseCheck) => boolean) =>
    active ? actionOf(detail, checks.find(fits)) : undefined;
  return {
    ask: first(asItStands),
    look: first((check) => check.code !== LOBE && !asItStands(check)),
    read: first(({ code }) => code === LOBE),
  };
}
