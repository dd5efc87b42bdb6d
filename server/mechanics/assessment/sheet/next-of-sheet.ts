import type { NextAction, Subject } from '../assessment.ts';
import { byPlace, listed, lowOrHigh, placeOf, upperFirst, valveSubject } from '../common/said.ts';
import type { Side, ValvePlace } from '../evidence.ts';
import type { SheetDetail, SheetOddDetail, SheetRowDetail, SheetSwapDetail } from './detail.ts';
import { placesSaid } from './rows-to-read.ts';

/** As often as an odd valve is read before anything is moved for it. */
const TWICE = 2;
const THREE = 3;

interface Said {
  readonly action: string;
  readonly about: Subject;
  readonly sentence: string;
  readonly reason: string;
  /** The step it is done in; left out, the sheet. */
  readonly step?: 'parts';
}

const sideOf = (side: Side): Subject => ({ of: 'side', valve: side });

/** A swap that was made and not read to its end, or whose difference is gone. */
function ofSwap({ side, because, missing, places, armNames, showsNow }: SheetSwapDetail): Said[] {
  const about = sideOf(side);
  const reason = 'The swap that was made tells part from position once all four are read.';
  const now = missing.filter((cell) => cell.now).map(({ place, arm }) => `${place} with ${arm}`);
  if (because === 'not-read' && now.length > 0)
    return [
      {
        action: 'read-swapped',
        about,
        sentence: `Read ${listed(now)} as they sit now, the same way as before: spring, lifter and lash alike.`,
        reason,
      },
    ];
  if (because === 'not-read') {
    const sentence = `Put ${listed(armNames)} back where they were, say where each sits, and read ${listed(missing.map(({ place, arm }) => `${place} with ${arm}`))}.`;
    return [{ action: 'swap-back', about, sentence, reason, step: 'parts' }];
  }
  return because === 'gone' && !showsNow
    ? [
        {
          action: 'swap-back',
          about,
          sentence: `Put ${listed(armNames)} back on ${listed(places)} as they were, say where each sits, and read both once more.`,
          reason:
            'The difference is gone since they were moved: it shows again, or it came from the fitting.',
          step: 'parts',
        },
      ]
    : [];
}

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
        sentence: `Put the arms of ${placeOf(odd)} and ${placeOf(partner)}${bank === '' ? '' : ' (on the same bank)'} on record, with which sits where: these two are swapped next.`,
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
function ofOdd(odd: SheetOddDetail, rows: readonly SheetRowDetail[]): Said[] {
  const { cause, passes, valveOff } = odd;
  const about = valveSubject(odd);
  const place = placeOf(odd);
  if (cause === 'part' || (cause === 'position' && passes.lobe > 0)) return [];
  if (cause === 'lobe') return ofLobe(odd, rows);
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

/**
 * What the sheet asks for next, once its rows are read: a swap that was begun is read to its end, then the odd valves,
 * the worst first. Left out where nothing is odd, or all of it was done.
 */
export function nextOfSheet({ rows, sides, swaps }: SheetDetail): NextAction | undefined {
  const odd = sides
    .flatMap((side) => side.odd)
    .toSorted(
      (a, b) =>
        Math.abs(b.valveOff ?? b.lobeOff ?? 0) - Math.abs(a.valveOff ?? a.lobeOff ?? 0) ||
        (a.judgementId < b.judgementId ? -1 : 1),
    );
  const [said] = [...swaps.flatMap(ofSwap), ...odd.flatMap((each) => ofOdd(each, rows))];
  if (said === undefined) return undefined;
  const { action, about, sentence, reason, step = 'sheet' } = said;
  return {
    id: `next:sheet:${action}`,
    action,
    step,
    about,
    sentence: upperFirst(sentence),
    reason,
    turns: true,
  };
}
