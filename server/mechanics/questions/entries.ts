import { between, within } from './compare.ts';
import { grossExpected, idsOf, ratioExpected, readLobe, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { QuestionInput } from './types.ts';

/** A number as somebody entered it, with what the other numbers would make it. */
interface Entry {
  readonly name: string;
  readonly lift: number;
  readonly of: 'valve' | 'lobe';
  readonly expected: readonly number[];
  readonly restsOn: readonly string[];
}

const known = (values: readonly (number | undefined)[]) => values.filter((value) => value !== undefined);

function isUsual(lift: number, of: Entry['of'], t: Tolerances): boolean {
  return of === 'valve' ? between(lift, t.valveLeast, t.valveMost) : between(lift, t.lobeLeast, t.lobeMost);
}

/** All lifts entered. */
function entriesOf(input: QuestionInput): Entry[] {
  const valve = valveLift(input);
  const ratio = ratioExpected(input);
  const fromValve = valve === undefined || ratio === undefined ? undefined : valve / ratio;
  const gross = grossExpected(input);
  const valves = idsOf(input.valvePasses);
  const lobes = idsOf(input.lobePasses);
  const read = readLobe(input);
  const card = input.cardLobeLift;
  const stated = input.valvePasses.length === 0 ? undefined : input.statedValveLift;
  const entry = (
    name: string,
    lift: number | undefined,
    of: Entry['of'],
    expected: (number | undefined)[],
    restsOn: string[],
  ): Entry[] => (lift === undefined ? [] : [{ name, lift, of, expected: known(expected), restsOn }]);
  return [
    ...entry('valve lift', valve, 'valve', gross, valves),
    ...entry('valve lift in the sum', stated, 'valve', [valve, ...gross], valves),
    ...entry('lobe lift', read, 'lobe', [card, fromValve], lobes),
    ...entry('lobe lift in the sum', input.statedLobeLift, 'lobe', [read, card, fromValve], lobes),
    ...entry('lobe lift on the card', card, 'lobe', [read, fromValve], []),
    ...entry('valve lift on the card', input.cardValveLift, 'valve', gross, []),
  ];
}

/** An entry that is no usual lift, put right by a factor into one that is. */
interface PutRight {
  readonly entry: Entry;
  readonly lift: number;
  readonly fits: boolean;
}

export function putRightBy(input: QuestionInput, t: Tolerances, factors: readonly number[]): PutRight[] {
  return entriesOf(input)
    .filter((entry) => !isUsual(entry.lift, entry.of, t))
    .flatMap((entry) =>
      factors
        .map((factor) => entry.lift * factor)
        .filter((lift) => isUsual(lift, entry.of, t))
        .map((lift) => ({
          entry,
          lift,
          fits: entry.expected.some((expected) => within(lift - expected, t.slipFits)),
        })),
    );
}
