import { byPlace, lowOrHigh, placeOf, valveSubject } from '../../common/said.ts';
import type { ValvePlace } from '../../evidence.ts';
import type { SheetOddDetail, SheetRowDetail } from '../detail.ts';
import { placesSaid } from '../rows-to-read.ts';
import type { Said } from './said.ts';

/** As often as an odd valve is read before anything is moved for it. */
const TWICE = 2;
const THREE = 3;

/** The lobes next to a low one, as far as they were not read. */
function neighbours(rows: readonly SheetRowDetail[], odd: ValvePlace): ValvePlace[] {
  return rows.filter(
    (row) =>
      row.valve === odd.valve &&
      Math.abs(row.cylinder - odd.cylinder) === 1 &&
      !row.cells.some(({ kind }) => kind === 'lobe-lift'),
  );
}

function ofLobe(odd: SheetOddDetail, rows: readonly SheetRowDetail[]): Said[] {
  const beside = neighbours(rows, odd);
  if (odd.passes.lobe >= TWICE && beside.length === 0) return [];
  const lobes = [...(odd.passes.lobe >= TWICE ? [] : [odd]), ...beside].toSorted(byPlace);
  return [
    {
      action: 'read-lobe-again',
      about: valveSubject(odd),
      sentence: `Read the lobe of ${placesSaid(lobes)} at the lifter once more; no part has to move for that.`,
      reason: `The lobe of ${placeOf(odd)} is the odd one: cam or lifter, not the rocker.`,
    },
  ];
}

/** Of two arms those that are not on record yet. */
function namesWanted(
  odd: SheetOddDetail,
  { partner, arm, partnersArm }: NonNullable<SheetOddDetail['toSwap']>,
): string {
  const bank = partner.sameBank === true ? ' (on the same bank)' : '';
  if (arm === undefined && partnersArm === undefined)
    return `Put the arms of ${placeOf(odd)} and ${placeOf(partner)}${bank} on record, with which sits where: these two are swapped next.`;
  const [place, other] =
    arm === undefined
      ? [placeOf(odd), `${partnersArm ?? ''} on ${placeOf(partner)}`]
      : [`${placeOf(partner)}${bank}`, `${arm} on ${placeOf(odd)}`];
  return `Put the arm of ${place} on record, with where it sits: it is swapped with ${other} next.`;
}

function swapping(odd: SheetOddDetail): Said[] {
  const { toSwap } = odd;
  if (toSwap === undefined) return [];
  const { partner, arm, partnersArm } = toSwap;
  const bank = partner.sameBank === true ? ', on the same bank' : '';
  const about = valveSubject(odd);
  const reason = 'What goes with the arm is the part; what stays on the valve is its position.';
  if (arm === undefined || partnersArm === undefined)
    return [
      {
        action: 'name-arms',
        about,
        sentence: namesWanted(odd, toSwap),
        reason,
        step: 'parts',
      },
    ];
  return [
    {
      action: 'swap-arms',
      about,
      sentence: `Swap ${arm} (${placeOf(odd)}) with ${partnersArm} (${placeOf(partner)}${bank}), and say where each sits then.`,
      reason,
      step: 'parts',
    },
  ];
}

/** An odd valve: its lobe, itself again, and only then the swap. What was done is not asked again. */
export function ofOdd(odd: SheetOddDetail, rows: readonly SheetRowDetail[]): Said[] {
  const { cause, passes, valveOff, sinks } = odd;
  const about = valveSubject(odd);
  const place = placeOf(odd);
  if (cause === 'part' || cause === 'mark' || (cause === 'position' && passes.lobe > 0)) return [];
  if (cause === 'lobe') return ofLobe(odd, rows);
  if (sinks === true)
    return [
      {
        action: 'read-on-solid-lifter',
        about,
        sentence: `Put a solid or locked lifter under ${place} and under one beside it, and read both again.`,
        reason: 'A hydraulic lifter that sinks reads low: that is ruled out before a part is moved.',
      },
    ];
  const off = valveOff === undefined ? 'It is odd' : `It is ${lowOrHigh(valveOff)}`;
  const wanted = cause === 'cannot-tell' ? THREE : cause === 'position' ? 0 : TWICE;
  // A lobe is told from its siblings by two others at the least.
  const lobes =
    odd.lobeOff === undefined
      ? [...(passes.lobe === 0 ? [odd] : []), ...neighbours(rows, odd)].toSorted(byPlace)
      : [];
  const again = passes.lift < wanted;
  if (again || lobes.length > 0) {
    const lift = again ? `Read ${place} once more, the same way` : '';
    const lobe = lobes.length > 0 ? `ead the lobe of ${placesSaid(lobes)} at the lifter` : '';
    const said = [lift, lobe === '' ? '' : `${again ? 'then r' : 'R'}${lobe}`].filter((each) => each !== '');
    return [
      {
        action: 'read-again',
        about,
        sentence: `${said.join(', ')}. Nothing is moved for that.`,
        reason: `${off}: a slip and the lobe are ruled out before a part is moved.`,
      },
    ];
  }
  return swapping(odd);
}
