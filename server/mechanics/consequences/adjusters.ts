import { formatNumber } from '../../../shared/quantities/format.ts';
import type { ConsequenceInput } from './types.ts';

/** `2.73`, or `2.70 to 2.76` where the valves differ by a digit that is told. */
function turnsOf(ratios: readonly number[], isStud: boolean): string {
  const told = [...new Set(ratios.map((ratio) => formatNumber(isStud ? 1 + ratio : ratio, 2)))].sort();
  const [least = '', most = least] = [told[0], told.at(-1)];
  return least === most ? least : `${least} to ${most}`;
}

/** What a turn does at the valve, before and after; a change that no digit shows is not told. */
function turnSaid(inputs: readonly ConsequenceInput[]): string[] {
  const mounting = inputs[0]?.mounting;
  const after = inputs.flatMap((input) => input.after?.value ?? []);
  if (after.length === 0 || mounting === undefined || mounting === 'pedestal') return [];
  const screw = mounting === 'stud' ? 'the nut' : 'a screw over the pushrod';
  const now = turnsOf(after, mounting === 'stud');
  const was = turnsOf(
    inputs.flatMap((input) => input.before?.value ?? []),
    mounting === 'stud',
  );
  const than = was === '' || was === now ? '' : ` instead of ${was}`;
  return [`One turn of ${screw} moves the gap at the valve by ${now} pitches of its thread${than}.`];
}

/** Other arms want every adjuster set again; what a turn of it does at the valve follows from the ratios. */
export function adjustersWord(inputs: readonly ConsequenceInput[], otherArms: boolean): string {
  const lifter = inputs[0]?.lifter;
  const what = lifter === 'hydraulic' ? 'preload' : lifter === 'solid' ? 'lash' : 'lash or preload';
  const again = otherArms
    ? [`Set every adjuster again once they are fitted: the ${what} it had belongs to the other arms.`]
    : [];
  return [...again, ...turnSaid(inputs)].join(' ');
}
