import { turningCaution } from '../cam/caution.ts';
import { STUD_LOAD } from '../kit/allowances.ts';
import { bareLoad, loadSaid } from '../kit/say-inches.ts';
import { LBF } from '../kit/si.ts';
import { makerFirst, springCaution } from '../springs/caution.ts';

/** Said wherever a gap is short. */
export const shortCaution =
  'A gap is short of its limit: stop, do not run it, and have a qualified shop look.';

type StudSize = '5/16' | '3/8' | '7/16';

interface Studs {
  readonly mounting?: 'stud' | 'pedestal' | 'shaft';
  readonly size?: StudSize;
  /** Open load of the spring, the most that it may be. */
  readonly openLoad?: number;
}

const usual = () =>
  `3/8 studs are commonly kept below about ${bareLoad(STUD_LOAD.from * LBF)} to ${loadSaid(STUD_LOAD.to * LBF)} open`;

/** A stud that may bear more than is usual: of the largest nothing is said. */
export const mayBearTooMuch = ({ mounting, size }: Pick<Studs, 'mounting' | 'size'>): boolean =>
  mounting === 'stud' && size !== '7/16';

/** A word on the stud, by its size and by the most that the spring may bear on the valve. */
export function studCautions(studs: Studs): string[] {
  const { size, openLoad } = studs;
  if (!mayBearTooMuch(studs) || openLoad === undefined) return [];
  if (openLoad < STUD_LOAD.from * LBF) return [];
  const load = `The spring may open at up to ${loadSaid(openLoad)}: ${usual()}`;
  if (size === '3/8') return [`${load}. The stud maker’s figure goes first.`];
  if (size === '5/16') return [`${load}, and a 5/16 stud is smaller. The stud maker’s figure goes first.`];
  return [`${load}. Say which stud is in it; its maker’s figure goes first.`];
}

/** What is said with every change, and with a stud or a gap that needs it. */
export const cautionsOf = (studs: readonly string[], short: boolean): string[] => [
  ...(short ? [shortCaution] : []),
  ...studs,
  turningCaution,
  springCaution,
  makerFirst,
];
