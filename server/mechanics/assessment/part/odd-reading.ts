import { defined } from '../../../../shared/defined.ts';
import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import {
  isPartFeature,
  isPartSize,
  PART_FEATURES,
  PART_SIZES,
} from '../../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../../shared/schemas/words.ts';
import type { PartKind } from '../../identify/kinds.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import { listed, upperFirst } from '../common/said.ts';
import { AS_READ, amongOf, type CountedReading, choice, type PartDoubt, without } from './doubts.ts';
import type { FamilyEvidence } from './family.ts';
import { firstOf } from './ranking.ts';
import { nameOf } from './size-said.ts';
import { STANDS_ALONE } from './stands-alone.ts';

/**
 * From where on none of the families is what the readings say; as high one family must stand without the odd one; with
 * fewer kinds there is too little to stand against it.
 */
const {
  noneTakesAll: NONE_TAKES_ALL,
  fitsWithoutOne: FITS_WELL,
  fewestKinds: FEWEST,
} = IDENTIFICATION_MODEL.told;

const KINDS: readonly PartKind[] = [...keysOf(PART_SIZES), ...keysOf(PART_FEATURES)];

interface Alone {
  readonly kind: PartKind;
  readonly family: FamilyEvidence;
  readonly probability: number;
}

/** The kind of reading without which a family would fit well, where with it none does. */
function oneThatStandsAlone(
  readings: readonly CountedReading[],
  families: readonly FamilyEvidence[],
): Alone | undefined {
  const kinds = KINDS.filter((kind) => readings.some((each) => each.kind === kind));
  if (kinds.length < FEWEST || firstOf(readings, families).noneOfThese < NONE_TAKES_ALL) return undefined;
  const tried = kinds.flatMap((kind): Alone[] => {
    const rest = readings.filter((each) => each.kind !== kind);
    const { family, probability } = firstOf(rest, families);
    if (family === undefined || probability < FITS_WELL) return [];
    return [{ kind, family, probability }];
  });
  return tried.toSorted((a, b) => b.probability - a.probability)[0];
}

/** A hole is read both ways at once: the second of those is no repeat. */
const ALWAYS_TWICE: ReadonlySet<string> = new Set(['hole-across-trunnion']);

/** The same figure was entered once more. */
function isRepeated(own: readonly CountedReading[]): boolean {
  const figures = own.map(({ size, word }) => size ?? word);
  const most = Math.max(0, ...figures.map((one) => figures.filter((other) => other === one).length));
  return most > (own.some(({ kind }) => ALWAYS_TWICE.has(kind)) ? 2 : 1);
}

/** The question to readings of one kind. */
export function askAlone(own: readonly CountedReading[], size?: string): PartDoubt[] {
  const [first] = own;
  if (first === undefined) return [];
  const name = nameOf(first.kind);
  const ids = own.map(({ id }) => id).sort();
  return [
    {
      code: STANDS_ALONE,
      ask: `${upperFirst(name)}, ${listed(own.map(({ readAs }) => asEntered(readAs)).sort())}, stands alone: the other readings go together in one family, and this one does not. Is it as it was read?`,
      ...defined({ size }),
      test: `${isPartSize(first.kind) ? 'read' : 'look at'} the ${name} again, before you settle on none of these`,
      restsOn: ids,
      among: amongOf(ids),
      choices: [
        choice('found', 'It was misread', 'It does not count; it is read again and entered again.'),
        AS_READ,
      ],
      effect: (now, chosen) => (chosen === 'found' ? without(now, ids) : now),
    },
  ];
}

/** One reading asks for itself before none of the families stands first for it. */
export const oddReading =
  (families: readonly FamilyEvidence[]) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    if (families.length === 0) return [];
    const counted = readings.filter(({ kind }) => isPartSize(kind) || isPartFeature(kind));
    const alone = oneThatStandsAlone(counted, families);
    if (alone === undefined) return [];
    const own = counted.filter(({ kind }) => kind === alone.kind);
    // Read again already, and it came out the same.
    if (isRepeated(own)) return [];
    return askAlone(own, `Without it ${alone.family.name} would stand first.`);
  };
