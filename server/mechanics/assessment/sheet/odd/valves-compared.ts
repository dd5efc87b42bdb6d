import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { AssessedQuestion, Judgement } from '../../assessment.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence, Side } from '../../evidence.ts';
import type { SetUpKnown } from '../../ratio/compared/known.ts';
import { lobesOfSetUps } from '../../ratio/compared/lobes-read.ts';
import { lashAskedOf } from '../asked/lash-of-one.ts';
import { lobesOfWhom, lobesUnderCard, sidesOffCard } from '../lobes/lobe-under-card.ts';
import { lobesUnlikeOf } from '../lobes/lobe-unlike.ts';
import { lobesApartAsked, wornLobes } from '../lobes/lobe-worn.ts';
import { besidesWorn } from '../lobes/worn-told.ts';
import type { SheetSwapDetail } from '../rows/detail.ts';
import { doubtsOfRows } from '../rows/doubts-of-rows.ts';
import { ratiosOf } from '../rows/ratios.ts';
import type { SheetRow } from '../rows/rows.ts';
import { groupsTold } from '../sides/group-off.ts';
import { sidesAgain, sidesAgainTold } from '../sides/side-again.ts';
import { SIDE_OTHERS } from '../sides/side-clean.ts';
import { sidesTold } from '../sides/side-told.ts';
import { compare } from './compare.ts';
import { isMarked } from './marked-told.ts';
import { oddBefore } from './odd-before.ts';

/** Sides of which nobody can say yet that none stands out. */
const waitingSides = (
  doubtful: readonly SheetRow[],
  swaps: readonly SheetSwapDetail[],
  before: ReturnType<typeof oddBefore>,
): Side[] => [
  ...doubtful.map(({ valve }) => sideOfValve(valve)),
  // An odd valve whose arm was moved stays the odd one till it is read again.
  ...swaps
    .filter(({ because, readOdd }) => because === 'not-read' && readOdd.length > 0)
    .map(({ side }) => side),
  ...before.map(({ place }) => sideOfValve(place.valve)),
];

/** Each valve against its siblings, its lobe against the others and the card, and every side as a whole. */
export function valvesCompared(
  evidence: Evidence,
  rows: readonly SheetRow[],
  known: readonly SetUpKnown[],
  raised: readonly AssessedQuestion[],
) {
  const doubts = doubtsOfRows(rows, raised);
  // What was answered not to be read right stands beside no valve that was read again since.
  const again = sidesAgain(evidence, rows);
  const left = new Set(again.flatMap((each) => each.left.map(placeOf)));
  const doubtful = new Set([...doubts.doubtful, ...left]);
  const { doubted } = doubts;
  const lashAsked = lashAskedOf(raised);
  const { sides: all, swaps, ofPositions } = compare(evidence, rows, { doubtful, doubted, lashAsked }, known);
  const ratios = ratiosOf(evidence, rows);
  const worn = wornLobes(evidence, all, rows, lobesOfSetUps(known));
  const lobesApart = lobesApartAsked(evidence, all, rows, lobesOfSetUps(known));
  const sides = besidesWorn(all, worn);
  const isDoubtful = (row: SheetRow): boolean => doubtful.has(placeOf(row));
  const before = oddBefore(evidence, rows, swaps, doubted);
  const waiting = [
    ...waitingSides(rows.filter(isDoubtful), swaps, before),
    ...sides.flatMap((each) =>
      each.noMiddle === undefined && lobesUnlikeOf(each).length === 0 ? [] : [sideOfValve(each.side)],
    ),
  ];
  // What is another arm by its mark is no part of what the others come to.
  const marked = new Set(sides.flatMap(({ odd }) => odd.filter(isMarked)).map(placeOf));
  const ofSet = rows.filter((row) => !isDoubtful(row) && !marked.has(placeOf(row)));
  const ofSides = sidesTold(evidence, ofSet, { sides: all, ratios, waiting }, raised);
  // The answer that took them away stays with its question.
  const ofLeft = sidesTold(
    evidence,
    rows.filter((row) => left.has(placeOf(row))),
    { sides: all, ratios, waiting },
    raised,
  );
  // Of a side that is read again that is told, and what is left of it.
  const isAgain = ({ id, about }: Judgement): boolean =>
    id.startsWith(SIDE_OTHERS) &&
    about.of === 'side' &&
    again.some(({ left: own }) => own.some(({ valve }) => sideOfValve(valve) === sideOfValve(about.valve)));
  const told = {
    judgements: [...sidesAgainTold(again, ratios), ...ofSides.judgements.filter((each) => !isAgain(each))],
    questions: [...ofSides.questions, ...ofLeft.questions.filter(({ answered }) => answered !== undefined)],
  };
  const grouped = groupsTold(evidence, rows, sides);
  const offCard = sidesOffCard(told.judgements);
  const underCard = lobesUnderCard(evidence, rows, known, {
    told: new Set([
      ...doubtful,
      ...worn.map(({ place }) => placeOf(place)),
      ...rows.filter(({ valve }) => offCard.has(sideOfValve(valve))).map(placeOf),
    ]),
    ratios,
  });
  const ofWhom = lobesOfWhom(evidence, rows, known, doubts.doubtsOf);
  return {
    doubts,
    left,
    ofWhom,
    sides,
    swaps,
    ofPositions,
    ratios,
    before,
    told,
    grouped,
    worn,
    lobesApart,
    underCard,
  };
}
