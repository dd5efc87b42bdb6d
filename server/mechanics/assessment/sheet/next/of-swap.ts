import type { Subject } from '../../assessment.ts';
import { listed, placeOf } from '../../common/said.ts';
import type { Side } from '../../evidence.ts';
import { heightsLooked, pushrodsSwapped } from '../odd/position.ts';
import type { SheetSwapDetail } from '../rows/detail.ts';
import type { Said } from './said.ts';

const sideOf = (side: Side): Subject => ({ of: 'side', valve: side });

/** What a position is made of, once it is no part: its pushrod, then tip and stud height. */
function ofPosition({ side, verdict, oddPlace, places, pushrod, heights }: SheetSwapDetail): Said[] {
  if (oddPlace === undefined || (verdict !== 'position' && verdict !== 'both')) return [];
  const about = sideOf(side);
  if (pushrod === undefined)
    return [
      {
        action: 'swap-pushrods',
        about,
        sentence: pushrodsSwapped(places),
        reason: `What is odd stayed on ${oddPlace}: its pushrod is the next that moves without more taken apart.`,
      },
    ];
  if (pushrod === 'goes' || heights !== undefined) return [];
  return [
    {
      action: 'look-at-heights',
      about,
      sentence: heightsLooked(oddPlace),
      reason: `What is odd on ${oddPlace} went neither with the arm nor with the pushrod.`,
      turns: false,
    },
  ];
}

/** It is the part: only now its lot, and the number on it leads there. */
function ofPart({ verdict, oddArm, arms, armNames, numberRead }: SheetSwapDetail): Said[] {
  if ((verdict !== 'part' && verdict !== 'both') || oddArm === undefined || numberRead) return [];
  const name = armNames[oddArm === arms[0] ? 0 : 1];
  return [
    {
      action: 'read-lot',
      about: { of: 'arm', armId: oddArm, name },
      sentence: `Read every number on ${name} besides its ratio, word for word, and photograph it.`,
      reason: `It is the part: the number on ${name} leads to its lot.`,
      step: 'parts',
      // What is on record of the arm is added to: it is not put on record a second time.
      at: { form: 'marks', field: 'otherNumber' },
      turns: false,
    },
  ];
}

/** A swap that was made and not read to its end, whose difference is gone, or that tells of a position. */
export function ofSwap(swap: SheetSwapDetail): Said[] {
  const { side, because, missing, places, armNames, showsNow, ordinary, lashAt } = swap;
  if (ordinary === true) return [];
  const about = sideOf(side);
  const reason = 'The swap that was made tells part from position once all four are read.';
  const now = missing.filter((cell) => cell.now).map(({ place, arm }) => `${place} with ${arm}`);
  if (lashAt !== undefined)
    return [
      {
        action: 'read-at-zero-lash',
        about,
        sentence: `Take the lash of ${listed(places)} up to zero, and read both again with the arms that sit there now.`,
        reason: `Lash that is left in stays on ${placeOf(lashAt)} as a position does: no pushrod moves before that is known.`,
      },
    ];
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
    : [...ofPosition(swap), ...ofPart(swap)];
}
