import { formatNumber } from '../../../shared/quantities/format.ts';
import type { ConsequenceInput } from './types.ts';

/** What a turn does at the valve, before and after; a change that no digit shows is said to be none. */
function turnSaid({ before, after, mounting }: ConsequenceInput): string[] {
  if (after === undefined || mounting === undefined || mounting === 'pedestal') return [];
  const pitches = (ratio: number) => formatNumber(mounting === 'stud' ? 1 + ratio : ratio, 2);
  const screw = mounting === 'stud' ? 'the nut' : 'a screw over the pushrod';
  const now = pitches(after.value);
  const was = before === undefined ? undefined : pitches(before.value);
  const than = was === undefined ? '' : was === now ? ', as before' : ` instead of ${was}`;
  return [`One turn of ${screw} moves the gap at the valve by ${now} pitches${than}.`];
}

/** Other arms want every adjuster set again; what a turn of it does at the valve follows from the ratio. */
export function adjustersWord(input: ConsequenceInput, otherArms: boolean): string {
  const { lifter } = input;
  const what = lifter === 'hydraulic' ? 'preload' : lifter === 'solid' ? 'lash' : 'lash or preload';
  const again = otherArms
    ? [`Set every adjuster again once they are fitted: the ${what} it had belongs to the other arms.`]
    : [];
  return [...again, ...turnSaid(input)].join(' ');
}
