import { answerUnit, dimensionOf, type Unit, type UnitSystem } from './units.ts';

/*
 * Which units a call is spoken in. Sentences are made deep inside, by functions that know lengths and nothing of
 * calls; the units they speak are set around the making of a page or an assessment, once, and end with it.
 */
let spoken: UnitSystem = 'inch';

/** The units that are spoken now. */
export const spokenUnits = (): UnitSystem => spoken;

/** Makes what `work` makes in these units. It must be done when it returns: nothing is spoken after that. */
export function speaking<T>(system: UnitSystem, work: () => T extends PromiseLike<unknown> ? never : T): T {
  const before = spoken;
  spoken = system;
  try {
    return work();
  } finally {
    spoken = before;
  }
}

/** The unit in which a quantity in `unit` is told: its own, unless the call speaks millimetres and it is none of them. */
export function toldIn(unit: Unit): Unit {
  const dimension = dimensionOf(unit);
  const [inch, metric] = [answerUnit(dimension, 'inch'), answerUnit(dimension, 'metric')];
  return spoken === 'metric' && (unit === inch || unit === 'thou') ? metric : unit;
}

/** Words that hold a figure: those of the units that are spoken. */
const inUnits = (words: Readonly<Record<UnitSystem, string>>): string => words[spoken];

/** `inches`, for a heading over figures without their unit. */
export const lengthsIn = (): string => inUnits({ inch: 'inches', metric: 'millimetres' });
