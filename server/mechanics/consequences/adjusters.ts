import { formatNumber } from '../../../shared/quantities/format.ts';
import type { ConsequenceInput } from './types.ts';

/** `2.73`, or `2.70 to 2.76` where the valves differ by a digit that is told. */
function turnsOf(ratios: readonly number[], each: (ratio: number) => number): string {
  const told = [...new Set(ratios.map((ratio) => formatNumber(each(ratio), 2)))].sort();
  const [least = '', most = least] = [told[0], told.at(-1)];
  return least === most ? least : `${least} to ${most}`;
}

/** What a turn moves, and by how many pitches; of a lever the pivot goes down, and the cup goes further than it. */
function turnOf(isStud: boolean, lifter: ConsequenceInput['lifter']) {
  const screw = isStud ? 'the nut' : 'a screw over the pushrod';
  return lifter === 'hydraulic'
    ? {
        does: `One turn of ${screw} pushes the lifter’s plunger in by`,
        each: (ratio: number) => (isStud ? 1 + 1 / ratio : 1),
      }
    : {
        does: `One turn of ${screw} moves the gap at the valve by`,
        each: (ratio: number) => (isStud ? 1 + ratio : ratio),
      };
}

/** What a turn does, before and after; a change that no digit shows is not told. */
function turnSaid(inputs: readonly ConsequenceInput[]): string[] {
  const { mounting, lifter } = inputs[0] ?? {};
  const after = inputs.flatMap((input) => input.after?.value ?? []);
  if (after.length === 0 || mounting === undefined || mounting === 'pedestal') return [];
  const { does, each } = turnOf(mounting === 'stud', lifter);
  const now = turnsOf(after, each);
  const was = turnsOf(
    inputs.flatMap((input) => input.before?.value ?? []),
    each,
  );
  const than = was === '' || was === now ? '' : ` instead of ${was}`;
  const pitches = now === '1.00' ? 'one pitch' : `${now} pitches`;
  return [`${does} ${pitches} of its thread${than}.`];
}

/** Other arms want every adjuster set again; what a turn of it does at the valve follows from the ratios. */
export function adjustersWord(inputs: readonly ConsequenceInput[], otherArms: boolean): string {
  const { lifter, mounting } = inputs[0] ?? {};
  if (otherArms && mounting === 'pedestal' && lifter === 'hydraulic')
    return 'Count the preload again once they are fitted: the preload it had belongs to the other arms, and a pedestal’s height or the pushrod’s length sets it.';
  const what = lifter === 'hydraulic' ? 'preload' : lifter === 'solid' ? 'lash' : 'lash or preload';
  const again = otherArms
    ? [`Set every adjuster again once they are fitted: the ${what} it had belongs to the other arms.`]
    : [];
  return [...again, ...turnSaid(inputs)].join(' ');
}
