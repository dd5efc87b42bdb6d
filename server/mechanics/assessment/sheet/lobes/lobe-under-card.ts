import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { AnswerChoice, AssessedQuestion, Judgement, NotToRun } from '../../assessment.ts';
import { asked } from '../../common/asked.ts';
import { chosenOf } from '../../common/chosen.ts';
import { inches, lowerFirst, placeOf, valveSubject } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import { doubtsOfCard } from '../../ratio/compared/card-doubted.ts';
import type { SetUpKnown } from '../../ratio/compared/known.ts';
import {
  isDown,
  isOpen,
  type LobeOff,
  lobeAction,
  lobeNotToRun,
  lobeOff,
  readOthers,
  WHOSE_VALVE,
  whoseNotToRun,
} from '../../ratio/compared/lobe-low.ts';
import { lobesOfSetUps } from '../../ratio/compared/lobes-read.ts';
import { isTooCoarse } from '../../ratio/read/dial.ts';
import { offSaid } from '../../ratio/told/lobe-card.ts';
import { claimOfRow } from '../rows/claim-of-row.ts';
import type { SheetRatioDetail } from '../rows/detail.ts';
import type { SheetRow } from '../rows/rows.ts';
import { byCaliper } from '../rows/siblings.ts';

const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'other-card',
    label: 'The card is another cam’s',
    changes: 'The card is put right; till then no lobe is set against it.',
  },
  {
    code: 'read-short',
    label: 'It was read short',
    changes: 'It is read again at the lifter, and this one is struck out with the reason.',
  },
  {
    code: 'found',
    label: 'It is worn',
    changes: 'It is not run: a qualified shop looks at lobe and lifter.',
  },
];

interface UnderCard {
  readonly judgement: Judgement;
  readonly question: AssessedQuestion;
  readonly notToRun: readonly NotToRun[];
}

function toldOf(evidence: Evidence, row: SheetRow, off: LobeOff, ratio: number | undefined): UnderCard {
  const { cylinder, valve, read, printed } = off;
  const about = valveSubject(row);
  const restsOn = row.lobes.map(({ id }) => id).sort();
  const place = placeOf(row);
  const question = asked(
    {
      code: 'lobe-under-card',
      weight: 'weak',
      ask: `Is the lobe of ${place} worn, was it read short, or is the card another cam’s?`,
      knownBy: 'is the lobe worn read short or is the card another cams',
      size: `It reads ${inches(printed - read)} under the card.`,
      test: isOpen(off)
        ? readOthers(off)
        : 'read that lobe once more at the lifter; then look at the lifter’s face, and in the oil for metal',
      restsOn,
    },
    { about, step: 'sheet', among: 'lobe', answers: evidence.answers, choices: CHOICES },
  );
  const isOther = chosenOf(question) === 'other-card';
  const notToRun = lobeNotToRun(off);
  return {
    judgement: {
      id: `card-lobe:sheet:${cylinder}-${valve}`,
      about,
      against: { to: 'card-lobe', lobeLift: printed },
      ...(isOther ? {} : { word: 'differs' as const }),
      sentence: isOther
        ? `${place}: the card is another cam’s, as was answered. First: put it right.`
        : `${place}: ${lowerFirst(offSaid(off, ratio))}`,
      lacks: isOther
        ? ['the card of this cam']
        : isOpen(off)
          ? [
              lobeAction(off) === 'lobe-again'
                ? 'that lobe once more at the lifter'
                : 'the lobes beside it, read at the lifter',
            ]
          : ['a look at the lobe and the lifter’s face'],
      restsOn,
    },
    question,
    notToRun: isOther
      ? []
      : [
          {
            ...notToRun,
            id: `not-to-run:lobe-of-sheet:${cylinder}-${valve}`,
            ...(notToRun.todo === undefined
              ? {}
              : { todo: { ...notToRun.todo, step: 'sheet', settles: question.code } }),
          },
        ],
  };
}

/**
 * Lobes of the sheet that read under their card by the wear limit or more, judged as the lobe of a set-up is; one that a
 * set-up has too is told there, and one that is known to be down on its siblings by its stop.
 */
export function lobesUnderCard(
  evidence: Evidence,
  rows: readonly SheetRow[],
  known: readonly SetUpKnown[],
  { told, ratios }: { readonly told: ReadonlySet<string>; readonly ratios: readonly SheetRatioDetail[] },
): UnderCard[] {
  const inSetUps = new Set(lobesOfSetUps(known).map(placeOf));
  return rows.flatMap((row) => {
    const place = placeOf(row);
    const read = row.lobe?.value;
    const isTold = told.has(place) || inSetUps.has(place);
    if (read === undefined || read <= 0 || isTold || byCaliper(row) || isTooCoarse(row.lobes)) return [];
    const own = ratios.filter((each) => placeOf(each) === place && each.spring !== 'not-said');
    const ratio = own.find(({ spring }) => spring === 'light') ?? own[0];
    const claim = ratio === undefined ? undefined : claimOfRow(evidence, row, ratio.spring);
    const over = { claims: claim === undefined ? [] : [claim.ratio], ...defined({ ratio: ratio?.value }) };
    const off = lobeOff(evidence, known, row, read, ratio === undefined ? undefined : over);
    if (off === undefined || !isDown(off)) return [];
    // A card that is in doubt itself is no measure of it; the other lobes still are.
    if (!off.alone && doubtsOfCard(evidence, known, sideOfValve(row.valve)).length > 0) return [];
    return [toldOf(evidence, row, off, ratio?.value)];
  });
}

/**
 * The same of rows where it is asked on which valve they were read, and nothing else: a lobe so far down is not run
 * while that is open.
 */
export function lobesOfWhom(
  evidence: Evidence,
  rows: readonly SheetRow[],
  known: readonly SetUpKnown[],
  doubtsOf: (row: SheetRow) => readonly AssessedQuestion[],
): NotToRun[] {
  const inSetUps = new Set(known.map(({ read }) => placeOf(read.setUp)));
  return rows.flatMap((row) => {
    const doubts = doubtsOf(row);
    const read = row.lobe?.value;
    const isWhose = doubts.length > 0 && doubts.every(({ code }) => code === WHOSE_VALVE);
    if (!isWhose || read === undefined || read <= 0 || inSetUps.has(placeOf(row))) return [];
    if (byCaliper(row) || isTooCoarse(row.lobes)) return [];
    const off = lobeOff(evidence, known, row, read);
    return off === undefined || !isDown(off) ? [] : [whoseNotToRun(off, 'sheet')];
  });
}

/** Of a side whose lobes all lie off the card the card is asked once: none of them is told by itself. */
export const sidesOffCard = (judgements: readonly Judgement[]): ReadonlySet<string> =>
  new Set(
    judgements.flatMap(({ id, about }) =>
      id.startsWith('lobes:') && about.of === 'side' ? [sideOfValve(about.valve)] : [],
    ),
  );
