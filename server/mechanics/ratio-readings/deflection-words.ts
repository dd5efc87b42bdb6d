import { usualDeflection } from '../kit/allowances.ts';
import { EQUAL } from '../kit/nearest.ts';

interface Given {
  readonly lobeLift?: number | undefined;
  readonly mount?: 'stud' | 'pedestal' | 'shaft' | undefined;
  readonly errorLimit?: number | undefined;
}

/** What a deflection assumes, the inputs left out among it. */
export function deflectionAssumptions({ lobeLift, mount, errorLimit }: Given): string[] {
  return [
    'both lifts read at the same valve on the same solid lifter, at the same lash and from the same zero',
    ...(errorLimit === undefined
      ? ['lifts taken as exact: no interval']
      : [
          'error limits: anywhere within them alike; one indicator read both lifts, and its error limits go together by half (judgement, no published source)',
        ]),
    ...(lobeLift === undefined ? [] : ['the lobe lift is taken as exact, and is the same on both springs']),
    mount === undefined
      ? 'mount not said: set against nothing'
      : `usual deflection: ${usualDeflection(mount).source}`,
  ];
}

const SWAPPED =
  'The running spring reads more lift than the light one, which no spring can do: are the two swapped, or was the lash, the zero or a turn of the dial different?';
const NOT_SEEN =
  'The running spring reads no less lift than the light one, within what the readings can be off: no deflection was seen.';
const MORE =
  'More than usual: read both again on the same lifter, lash and zero, and count the dial’s turns. A sinking lifter or a rubbing pushrod takes lift as well.';
const LESS =
  'Less than usual: was the light reading really on a light spring, and the running one on the spring that runs?';

/** What a deflection must warn of. */
export function deflectionCautions(result: {
  readonly deflection: number;
  readonly interval95?: readonly [number, number] | undefined;
  readonly against: string;
}): string[] {
  const high = result.interval95?.[1] ?? result.deflection;
  const below = result.deflection < -EQUAL;
  return [
    ...(below ? [high < 0 ? SWAPPED : NOT_SEEN] : []),
    ...(result.against === 'more' ? [MORE] : []),
    ...(result.against === 'less' ? [LESS] : []),
    'The light lift alone is set against a stamp, and clearances take no credit for deflection.',
  ];
}
