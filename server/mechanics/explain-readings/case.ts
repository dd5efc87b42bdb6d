import { type Assumptions, assume } from './assumptions.ts';
import type { ExplainInput, ExplainReading } from './types.ts';

/** The input with what follows from it directly. */
export interface Case {
  readonly input: ExplainInput;
  readonly assumed: Assumptions;
  /** The names in question, in the order given; a mark that the list lacks comes last. */
  readonly nominals: readonly number[];
  /** The lifter of the first valve reading is hydraulic (or not said). */
  readonly hydraulic: boolean;
  /** For each reading: a valve lift out of all proportion to its lobe lift. */
  readonly oddReadings: readonly boolean[];
}

/** The lifter is hydraulic; one not said counts as hydraulic. */
export function isHydraulic(reading: ExplainReading): boolean {
  return reading.lifter !== 'solid';
}

/** The running spring is on; one not said counts as running. */
export function isRunning(reading: ExplainReading): boolean {
  return reading.spring !== 'light';
}

/** Two lobes on the card that are far enough apart to be mistaken for each other. */
export function lobesDiffer(given: Case): boolean {
  const { cardLobeLift, otherLobeLift } = given.input;
  if (cardLobeLift === undefined || otherLobeLift === undefined) return false;
  return Math.abs(cardLobeLift - otherLobeLift) > given.assumed.lobesDiffer;
}

function isOdd(reading: ExplainReading, input: ExplainInput, assumed: Assumptions): boolean {
  if (reading.of !== 'valve-lift') return false;
  const lobe = reading.atLobeLift ?? input.cardLobeLift ?? assumed.lobeMean;
  const ratio = reading.value / lobe;
  return ratio < assumed.unitRatioLow || ratio > assumed.unitRatioHigh;
}

/**
 * Passes of one set-up with one tool are off by the same: however many they are, together they know no more than the
 * tool does. Each is given so much less weight.
 */
function sharing(readings: readonly ExplainReading[]): readonly ExplainReading[] {
  if (readings.every(({ errorLimit }) => errorLimit === undefined)) return readings;
  return readings.map((reading) =>
    reading.errorLimit === undefined
      ? reading
      : {
          ...reading,
          sharing: readings.filter(
            ({ of, setUp, errorLimit }) =>
              of === reading.of && setUp === reading.setUp && errorLimit !== undefined,
          ).length,
        },
  );
}

/** Puts the input in order: defaults filled in, odd readings marked. */
export function openCase(input: ExplainInput): Case {
  const assumed = assume(input.assumptions);
  const names = new Set(input.nominals);
  if (input.mark !== undefined) names.add(input.mark);
  const firstValve = input.readings.find((reading) => reading.of === 'valve-lift');
  return {
    input: { ...input, readings: sharing(input.readings) },
    assumed,
    nominals: [...names],
    hydraulic: firstValve !== undefined && isHydraulic(firstValve),
    oddReadings: input.readings.map((reading) => isOdd(reading, input, assumed)),
  };
}
