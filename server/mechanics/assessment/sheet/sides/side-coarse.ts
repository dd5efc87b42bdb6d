import { keysOf, sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { Judgement } from '../../assessment.ts';
import { inches } from '../../common/said.ts';
import type { Evidence, Side } from '../../evidence.ts';
import { isTooCoarse, liftHalf } from '../../ratio/read/dial.ts';
import type { SheetRow } from '../rows/rows.ts';

/** `side-coarse:…`: what is next is found by it. */
export const COARSE = 'side-coarse:';

/** What a lift was read with that is too coarse to tell valves apart, as it is told. */
const READ_WITH = { rule: 'read with a rule', guess: 'guessed' } as const;

const isCoarse = (tool: string): tool is keyof typeof READ_WITH => Object.hasOwn(READ_WITH, tool);

/** Valves of which nothing can be told, as all that was read of them is off by more than what makes a valve odd. */
export function coarseTold(evidence: Evidence, rows: readonly SheetRow[]): Judgement[] {
  return keysOf({ intake: '', exhaust: '' }).flatMap((side: Side) => {
    const lots = rows.filter(({ valve }) => sideOfValve(valve) === side).flatMap(({ lifts }) => lifts);
    const readings = lots.flatMap((lot) => lot.readings);
    if (lots.length < 2 || lots.some((lot) => !isTooCoarse(lot.readings))) return [];
    const how = [...new Set(readings.map(({ tool }) => tool).filter(isCoarse))].sort();
    return [
      {
        id: `${COARSE}${side}`,
        about: { of: 'side', valve: side },
        against: { to: 'siblings' },
        sentence: `The ${side} valves were ${how.map((tool) => READ_WITH[tool]).join(' or ')}, within ${inches(liftHalf(evidence, readings))}: no valve is told from another by that. First: the same lifts with a dial indicator.`,
        lacks: ['the lifts read with a dial indicator'],
        restsOn: readings.map(({ id }) => id).sort(),
      },
    ];
  });
}
