import { keysOf, sideOfValve } from '../../../../shared/schemas/words.ts';
import type { Judgement } from '../assessment.ts';
import { listed } from '../common/said.ts';
import type { Side } from '../evidence.ts';
import { isTooCoarse } from './dial.ts';
import type { SheetRow } from './rows.ts';

/** `side-springs:…`: what is next is found by it. */
export const UNLIKE_SPRINGS = 'side-springs:';

const has = (row: SheetRow, spring: 'light' | 'running'): boolean =>
  row.lifts.some(
    (lot) => lot.spring === spring && lot.figure.value !== undefined && !isTooCoarse(lot.readings),
  );

/** As few as this on either spring are no half of a side: one valve read on both tells its deflection. */
const FEWEST = 2;

interface Parts {
  readonly side: Side;
  readonly light: readonly SheetRow[];
  readonly running: readonly SheetRow[];
}

const numbers = (part: readonly SheetRow[]): string => listed(part.map(({ cylinder }) => String(cylinder)));

function toldOf(parts: readonly Parts[]): Judgement[] {
  const [first] = parts;
  if (first === undefined) return [];
  const { side, light, running } = first;
  const both = parts.length > 1;
  const which = both ? '' : `${side} `;
  return [
    {
      id: `${UNLIKE_SPRINGS}${both ? 'both' : side}`,
      about: both ? { of: 'build' } : { of: 'side', valve: side },
      against: { to: 'siblings' },
      sentence: `The ${which}valves of ${numbers(light)} were read on a light spring, those of ${numbers(running)} on the running one. These are not set against one another: the running spring takes lift, and so does lash left in. First: all of them on the light spring, at zero lash.`,
      lacks: [`the ${which}lifts of ${numbers(running)} on the light spring, at zero lash`],
      restsOn: parts
        .flatMap((part) => [...part.light, ...part.running])
        .flatMap(({ lifts }) => lifts.flatMap(({ readings }) => readings.map(({ id }) => id)))
        .sort(),
    },
  ];
}

/** Sides that were read partly on a light spring and partly on the running one: the two parts are told apart by nothing. */
export function unlikeSprings(rows: readonly SheetRow[]): Judgement[] {
  const found = keysOf({ intake: '', exhaust: '' }).flatMap((side: Side): Parts[] => {
    const own = rows.filter(({ valve }) => sideOfValve(valve) === side);
    const light = own.filter((row) => has(row, 'light') && !has(row, 'running'));
    const running = own.filter((row) => has(row, 'running') && !has(row, 'light'));
    return light.length < FEWEST || running.length < FEWEST ? [] : [{ side, light, running }];
  });
  const [one, other] = found;
  const alike =
    one !== undefined &&
    other !== undefined &&
    numbers(one.light) === numbers(other.light) &&
    numbers(one.running) === numbers(other.running);
  return alike ? toldOf(found) : found.flatMap((each) => toldOf([each]));
}
