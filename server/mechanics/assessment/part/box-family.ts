import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import { listed, nominalSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { benchRatioOf } from './bench-ratio.ts';
import { amongOf, type CountedReading, choice, type PartDoubt, without } from './doubts.ts';
import type { FamilyEvidence } from './family.ts';
import type { InHand } from './in-hand.ts';
import { type Ranked, rankingOf } from './ranking.ts';
import { nameOf } from './size-said.ts';

const wordsIn = (text: string): string =>
  ` ${text
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, ' ')
    .trim()} `;

/** The family that a label names, by its name or its code; of several the one that says most. */
function namedOn(label: string, families: readonly FamilyEvidence[]): FamilyEvidence | undefined {
  const text = wordsIn(label);
  const named = families.flatMap((family) =>
    [family.name, family.code]
      .map(wordsIn)
      .filter((words) => words.trim() !== '' && text.includes(words))
      .map((words) => ({ family, words })),
  );
  return named.toSorted((a, b) => b.words.length - a.words.length)[0]?.family;
}

interface Box {
  /** The entry it was read in; none where it is on record with the arm. */
  readonly id?: string;
  readonly text: string;
}

function boxesOf({ arms }: Evidence, { armId }: InHand, readings: readonly CountedReading[]): Box[] {
  const arm = arms.find(({ id }) => id === armId);
  const own = readings.flatMap(({ id, kind, typed }) =>
    kind === 'box-label' ? [{ id, text: typed.trim() }] : [],
  );
  const recorded = arm === undefined || arm.boxLabel.trim() === '' ? [] : [{ text: arm.boxLabel.trim() }];
  return [...own, ...recorded.filter(({ text }) => own.every((each) => each.text !== text))];
}

const withRatio = ({ name, nominalRatio }: FamilyEvidence): string =>
  nominalRatio === undefined ? name : `${name}, a ${nominalSaid(nominalRatio)}`;

/** Nothing that was read is otherwise on that family, and its ratio is within what the arms leave open. */
function fitsAsRead(
  { family: { nominalRatio: ratio }, reasons }: Ranked,
  part: InHand,
  readings: readonly CountedReading[],
): boolean {
  if (reasons.some(({ word }) => word === 'differs')) return false;
  const bench = benchRatioOf(part, readings, [])?.detail;
  if (ratio === undefined || bench === undefined || bench.lacks !== undefined) return true;
  return ratio >= bench.low && ratio <= bench.high;
}

/** What of the part is not as that family has it. */
function otherwise({ reasons }: Ranked): string {
  const differing = reasons.filter(({ word }) => word === 'differs').map(({ kind }) => nameOf(kind));
  return differing.length === 0 ? '' : ` Not as that family has it: ${listed([...new Set(differing)])}.`;
}

/** The family that the box names, and the one that the readings put first before it. */
interface BoxFamily {
  readonly box: Box;
  readonly family: FamilyEvidence;
  readonly measured: Ranked;
  /** How the readings are to the family of the box alone. */
  readonly alone: Ranked | undefined;
  readonly alike: boolean;
}

function boxFamily(
  evidence: Evidence,
  part: InHand,
  readings: readonly CountedReading[],
): BoxFamily | undefined {
  const { families = [] } = evidence;
  const named = boxesOf(evidence, part, readings).flatMap((box) => {
    const family = namedOn(box.text, families);
    return family === undefined ? [] : [{ box, family }];
  });
  const [first] = named;
  if (first === undefined) return undefined;
  const { box, family } = first;
  const { candidates = [], kinds = 0 } = rankingOf(readings, families) ?? {};
  const [measured] = candidates;
  if (measured === undefined || kinds < 2 || measured.family.id === family.id) return undefined;
  if (measured.chance.probability < IDENTIFICATION_MODEL.named.from) return undefined;
  const [alone] = rankingOf(readings, [family])?.candidates ?? [];
  return {
    box,
    family,
    measured,
    alone,
    alike: alone !== undefined && fitsAsRead(alone, part, readings),
  };
}

/** A box of a family that the readings hold as well as the one that stands first: neither is the other's. */
export function boxAlike(
  evidence: Evidence,
  part: InHand,
  readings: readonly CountedReading[],
): string | undefined {
  const found = boxFamily(evidence, part, readings);
  if (found?.alike !== true) return undefined;
  const { box, family, measured } = found;
  return `The box says “${box.text}”: what was read fits ${family.name} and ${measured.family.name} alike, and only the ratio on the engine tells them apart.`;
}

/**
 * A box that names a family of the catalogue, while what was measured is of another: each of the two says something else
 * of ratio and fit, and nobody goes by the box before it is known whose it is.
 */
export const boxAgainstFamily =
  (evidence: Evidence, part: InHand) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    const found = boxFamily(evidence, part, readings);
    if (found === undefined || found.alike) return [];
    const { box, family, measured, alone } = found;
    const ids = box.id === undefined ? [] : [box.id];
    return [
      {
        code: 'box-against-family',
        ask: `The box says “${box.text}”, and by what was measured it is ${withRatio(measured.family)}. Is it the box of this part?`,
        knownBy: 'is it the box of a part of that family',
        size: `The box is of ${withRatio(family)}.${alone === undefined ? '' : otherwise(alone)}`,
        test: 'ask where the box came from, and hold it against another arm of the set; no box proves a ratio, only a valve does',
        restsOn: ids,
        among: amongOf(ids),
        choices: [
          choice(
            'found',
            'No, it is of another part',
            `The box does not count: it is told as ${measured.family.name}, as measured.`,
          ),
          choice(
            'wrong-in-box',
            'Yes: that part came in that box',
            `${family.name} was ordered and another came: sold as and fit are looked up for ${measured.family.name}, and whoever packed it is told.`,
          ),
          choice(
            'not-found',
            'Yes, and the part was measured wrong',
            `What is not as ${family.name} has it is measured again.`,
          ),
        ],
        effect: (now, chosen) => (chosen === 'found' ? without(now, ids) : now),
      },
    ];
  };
