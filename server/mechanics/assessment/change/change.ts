import { defined } from '../../../../shared/defined.ts';
import { adjustersWord, assumptionsOf, cautionsOf } from '../../consequences/consequences.ts';
import { medianKnown } from '../../valve-sheet/siblings.ts';
import type { AssessedQuantity, NotToRun, Subject } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import { byPlace, keyOf, placeOf, subjectSaid, valveSubject } from '../common/said.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import { gapCells } from '../sheet/cells.ts';
import { rowsOf, type SheetRow } from '../sheet/rows.ts';
import type { ChangeDetail } from './detail.ts';
import { figureQuantities, figuresOf } from './figures.ts';
import { type GapCalculations, gapCalculations } from './gap-calculations.ts';
import { gapsOf } from './gaps.ts';
import type { ValveRatio, WithheldRatio } from './input.ts';
import { gapsBefore, knownInput, lashInForce } from './known.ts';
import { type BeforeAndAfter, beforeAndAfter } from './ratios.ts';
import { calculatedJudgements, changeHeadline, shortGaps, worstHeadline } from './said.ts';
import { bendOf, variantsOf } from './spread.ts';

interface Ratios {
  readonly ratios: readonly ValveRatio[];
  readonly withheld: readonly WithheldRatio[];
}

/** One valve, or a side while none of its valves was read. */
interface Spot {
  readonly side: Side;
  readonly place?: ValvePlace;
  readonly about: Subject;
  readonly row?: SheetRow;
  readonly ratios: readonly ValveRatio[];
  /** Read on it, and not to be calculated with yet. */
  readonly withheld: readonly WithheldRatio[];
  readonly lobeLift?: number;
}

function lobeOf(evidence: Evidence, side: Side, rows: readonly SheetRow[], ratios: readonly ValveRatio[]) {
  const [first] = ratios.toSorted((a, b) => (a.setUpId < b.setUpId ? -1 : 1));
  const read = rows.flatMap(({ lobe }) => lobe?.value ?? []);
  return first?.lobeLift ?? medianKnown(read) ?? evidence.card[side].lobeLift;
}

function spotOf(
  evidence: Evidence,
  side: Side,
  place: ValvePlace | undefined,
  rows: readonly SheetRow[],
  { ratios, withheld }: Ratios,
): Spot {
  const row = place === undefined ? undefined : rows.find((each) => placeOf(each) === placeOf(place));
  const own = place === undefined ? [] : ratios.filter((each) => placeOf(each) === placeOf(place));
  const lobes =
    place === undefined ? rows.filter(({ valve }) => valve === side) : row === undefined ? [] : [row];
  const lobeLift = lobeOf(evidence, side, lobes, own);
  return {
    side,
    about: place === undefined ? { of: 'side', valve: side } : valveSubject(place),
    ratios: own,
    withheld: place === undefined ? [] : withheld.filter((each) => placeOf(each) === placeOf(place)),
    ...defined({ place, row, lobeLift }),
  };
}

/** The valves that something was read of which a change turns on; a side of which nothing was is told as one. */
function spotsOf(evidence: Evidence, rows: readonly SheetRow[], given: Ratios): Spot[] {
  const sides: readonly Side[] = ['intake', 'exhaust'];
  const gapped = [
    ...rows.filter((row) => gapCells(evidence, row).length > 0),
    ...evidence.sheet.filter(({ standing, arms }) => standing && arms === 'before'),
  ];
  return sides.flatMap((side) => {
    const here = [...given.ratios, ...given.withheld, ...gapped]
      .filter(({ valve }) => valve === side)
      .toSorted(byPlace);
    const places = [...new Map(here.map(({ cylinder, valve }) => [cylinder, { cylinder, valve }])).values()];
    if (places.length > 0) return places.map((place) => spotOf(evidence, side, place, rows, given));
    return evidence.card[side].lobeLift === undefined ? [] : [spotOf(evidence, side, undefined, rows, given)];
  });
}

/** Where the two ratios are from, with what their intervals allow. */
const sourcesSaid = ({ before, after }: BeforeAndAfter): string[] => [
  ...(before === undefined ? [] : [`the ratio before: ${before.source}`]),
  ...(after === undefined ? [] : [`the ratio after: ${after.source}`]),
];

/** A ratio that was read and is no ground for a figure yet: what comes first. */
const withheldSaid = ({ withheld, about }: Spot): string[] =>
  withheld
    .slice(0, 1)
    .map(({ lacks }) =>
      `The ratio read on ${subjectSaid(about)} is not calculated with yet. First: ${lacks.join('; ')}.`.replace(
        /([.?!])\.$/,
        '$1',
      ),
    );

interface Worked {
  readonly detail: ChangeDetail;
  readonly quantities: readonly AssessedQuantity[];
}

function workOut(evidence: Evidence, spot: Spot, calculations: GapCalculations): Worked {
  const { side, place, about, lobeLift } = spot;
  const ratios = beforeAndAfter(evidence, side, spot.ratios);
  const before = gapsBefore(evidence, place);
  const known = knownInput(evidence, {
    side,
    ...(place && { place }),
    ...(lobeLift && { lobeLift }),
    before,
  });
  const bend = bendOf(ratios.after, lobeLift, evidence);
  const figures = figuresOf(variantsOf(known, ratios, 0), about);
  const variants = variantsOf(known, ratios, bend);
  const gaps = gapsOf(variants, {
    evidence,
    calculations,
    about,
    bend: bend * (lobeLift ?? 0),
    before,
    measured: spot.row === undefined ? [] : gapCells(evidence, spot.row),
    ...defined({ after: ratios.after }),
  });
  const calculated = gaps.some(({ after }) => after?.basis === 'calculated');
  const lash = lashInForce(evidence, side, place);
  const piston = gaps.find(({ name }) => name === 'piston-to-valve')?.after;
  const closest = piston?.basis === 'calculated' ? calculations.closest(variants.middle) : undefined;
  const id = `change:${keyOf(about)}`;
  return {
    detail: {
      id,
      about,
      ...ratios,
      ...defined({ lobeLift, lash }),
      figures,
      gaps,
      ...defined({ closest }),
      adjusters: adjustersWord(variants.middle),
      assumptions: [
        ...assumptionsOf(variants.middle, calculated),
        ...sourcesSaid(ratios),
        ...withheldSaid(spot),
      ],
      ...defined({ notUsed: withheldSaid(spot)[0] }),
      cautions: cautionsOf(
        known,
        figures.map(({ name, after }) => ({ name, ...(after && { after: after.value }) })),
        gaps.some(({ word }) => word === 'short'),
      ),
    },
    quantities: figureQuantities(figures, about, ratios.after, lash),
  };
}

interface ChangeSaid extends PartSaid<readonly ChangeDetail[]> {
  readonly notToRun: readonly NotToRun[];
}

/** What a ratio does on each valve: before and after, from card, sold-as, planned or measured ratios. */
export function changePart(
  evidence: Evidence,
  ratios: readonly ValveRatio[],
  withheld: readonly WithheldRatio[] = [],
): ChangeSaid {
  const calculations = gapCalculations();
  const spots = spotsOf(evidence, rowsOf(evidence), { ratios, withheld });
  const worked = spots.map((spot) => workOut(evidence, spot, calculations));
  const details = worked.map(({ detail }) => detail);
  return {
    quantities: worked.flatMap(({ quantities }) => quantities),
    judgements: details.flatMap(calculatedJudgements),
    questions: [],
    stop: [],
    notToRun: details.flatMap(shortGaps),
    headlines: [
      ...worstHeadline(details),
      ...details.map((detail) => changeHeadline(detail, `headline:${detail.id}`)),
    ],
    detail: details,
  };
}
