import { keysOf, sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { Judgement } from '../../assessment.ts';
import { listed, placeOf } from '../../common/said.ts';
import type { Side } from '../../evidence.ts';
import { isTooCoarse } from '../../ratio/read/dial.ts';
import type { SheetRow } from '../rows/rows.ts';

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

/** By their cylinders; where one cylinder has several of these valves, each by its name. */
function named({ light, running }: Parts): { readonly light: string; readonly running: string } {
  const all = [...light, ...running].map(({ cylinder }) => cylinder);
  const nameOf = (row: SheetRow) => (new Set(all).size === all.length ? String(row.cylinder) : placeOf(row));
  return { light: listed(light.map(nameOf)), running: listed(running.map(nameOf)) };
}

function toldOf(parts: readonly Parts[]): Judgement[] {
  const [first] = parts;
  if (first === undefined) return [];
  const { side } = first;
  const both = parts.length > 1;
  const which = both ? '' : `${side} `;
  const names = named(first);
  return [
    {
      id: `${UNLIKE_SPRINGS}${both ? 'both' : side}`,
      about: both ? { of: 'build' } : { of: 'side', valve: side },
      against: { to: 'siblings' },
      sentence: `The ${which}valves of ${names.light} were read on a light spring, those of ${names.running} on the running one. These are not set against one another: the running spring takes lift, and so does lash left in. First: all of them on the light spring, at zero lash.`,
      lacks: [`the ${which}lifts of ${names.running} on the light spring, at zero lash`],
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
    named(one).light === named(other).light &&
    named(one).running === named(other).running;
  return alike ? toldOf(found) : found.flatMap((each) => toldOf([each]));
}
