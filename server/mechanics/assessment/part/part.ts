import { defined } from '../../../../shared/defined.ts';
import { halfWidthOf, howRead } from '../../identify/how-read.ts';
import type { Headline } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence, PartEvidence } from '../evidence.ts';
import { rankingTold } from './as-told.ts';
import { benchHeadline, benchRatioOf } from './bench-ratio.ts';
import { boxAlike } from './box-family.ts';
import { coverJudgement, coverOf } from './cover.ts';
import type { PartDetail, PartReadingDetail } from './detail.ts';
import type { Weighed } from './doubts.ts';
import { familySaid } from './family-headline.ts';
import { fastenerHeadline } from './fastener-headline.ts';
import { holesOf } from './holes.ts';
import { partsApart } from './holes-apart.ts';
import { type InHand, partsInHand } from './in-hand.ts';
import { twoOfOneArm } from './one-arm.ts';
import { ordinaryOf } from './ordinary.ts';
import { rankingOf } from './ranking.ts';
import { ratiosTold } from './ratio-told.ts';
import { studOf, throughHole } from './stud.ts';
import { firstAsked } from './tell.ts';
import { weighed } from './weigh.ts';

const WAITS = 'waits for an answer, and does not count before it';
const LEFT_OUT = 'does not count, as was answered';

/** How each reading was read, and what became of it. */
function readingDetail(reading: PartEvidence, { readings, leftOut }: Weighed): PartReadingDetail {
  const { id, kind, size, tool } = reading;
  const read = size === undefined ? undefined : { ...reading, size };
  const gone = leftOut.find(({ entryId }) => entryId === id);
  const counts = gone === undefined ? 'yes' : gone.waits ? 'waits' : 'left-out';
  const countsAs = readings.find((each) => each.id === id)?.countsAs;
  const said = { yes: countsAs, waits: WAITS, 'left-out': LEFT_OUT }[counts];
  return {
    entryId: id,
    how: read === undefined ? '' : howRead({ ...read, kind }),
    guess: tool === 'guess',
    counts,
    ...defined({
      within: read === undefined ? undefined : halfWidthOf(read),
      questionId: gone?.questionId,
      said,
    }),
  };
}

/** Which arm of the build it is, with its three marks word for word and where it sits now. */
function armOf({ arms, seats }: Evidence, { armId }: InHand): Pick<PartDetail, 'arm'> {
  const arm = arms.find(({ id }) => id === armId);
  if (arm === undefined) return {};
  const seat = seats.find((each) => each.armId === arm.id);
  const marks = [
    ...(arm.ratioStamp === '' ? [] : [`ratio stamp “${arm.ratioStamp}”`]),
    ...(arm.otherNumber === '' ? [] : [`other number “${arm.otherNumber}”`]),
    ...(arm.boxLabel === '' ? [] : [`box label “${arm.boxLabel}”`]),
  ];
  const marked = marks.length === 0 ? 'no marks are told of it' : marks.join(', ');
  const sits = seat === undefined ? 'it sits on no valve now' : `it sits on ${placeOf(seat)} now`;
  return { arm: { armId: arm.id, sentence: `It is the arm “${arm.name}”: ${marked}; ${sits}.` } };
}

function onePart(evidence: Evidence, part: InHand): PartSaid<PartDetail> {
  const { about, key } = part;
  const counted = weighed(part, evidence);
  const { readings, questions } = counted;
  const ofStud = studOf(readings);
  const holes = holesOf(readings, ofStud);
  const stud = ofStud === undefined ? undefined : throughHole(ofStud, holes);
  const cover = coverOf(evidence, part, readings, questions);
  const seen = part.readings.map((reading) => readingDetail(reading, counted));
  const ranked = rankingOf(readings, evidence.families);
  const [first] = firstAsked(questions, [{ readings: seen }]);
  const bench = benchRatioOf(
    part,
    readings,
    evidence.catalogueRatios,
    ratiosTold(evidence, { ...part, readings }),
  );
  const box = boxAlike(evidence, part, readings);
  const family = familySaid(part, ranked, questions, { bench: bench?.detail, first, box });
  const ranking = ranked === undefined ? undefined : rankingTold(ranked, family.told, first);
  const judgements = coverJudgement(part, cover.cover);
  const fastener = fastenerHeadline(part, readings, { holes, stud, questions });
  // What is known is the answer: that no family is named yet comes behind it, unless that is asked about.
  const isOpen = !family.told && first === undefined;
  return {
    quantities: bench?.quantity === undefined ? [] : [bench.quantity],
    judgements,
    questions,
    stop: [],
    headlines: [
      ...(isOpen ? [...fastener, ...family.headlines] : [...family.headlines, ...fastener]),
      ...benchHeadline(part, bench),
      ...judgements.map(
        ({ id, sentence }): Headline => ({
          id: `headline:${id}`,
          about,
          step: 'identify',
          sentence,
          judgementId: id,
        }),
      ),
    ],
    detail: {
      about,
      key,
      ...armOf(evidence, part),
      readings: seen,
      holes,
      ordinary: ordinaryOf(readings),
      ...cover,
      ...defined({ stud, ranking, benchRatio: bench?.detail }),
    },
  };
}

/** What each part in the hand may be, which fastener it takes, what room it leaves, and what does not go together. */
export function partPart(evidence: Evidence): PartSaid<readonly PartDetail[]> {
  const parts = partsInHand(evidence).map((part) => onePart(evidence, part));
  return {
    quantities: parts.flatMap(({ quantities }) => quantities),
    judgements: parts.flatMap(({ judgements }) => judgements),
    questions: [
      ...parts.flatMap(({ questions }) => questions),
      ...twoOfOneArm(evidence),
      ...partsApart(
        evidence,
        parts.map(({ detail }) => detail),
      ),
    ],
    stop: [],
    headlines: parts.flatMap(({ headlines }) => headlines),
    detail: parts.map(({ detail }) => detail),
  };
}
