import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import type { Judgement, Subject } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches, listed, nominalSaid, placeOf } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { claimsOn } from '../ratio/marks.ts';
import type { SheetHeld, SheetSideDetail } from './detail.ts';
import { stillAnswered } from './group-answered.ts';
import {
  cylindersOf,
  GROUP_CHOICES,
  GROUP_ENDS,
  type Grouped,
  HELD,
  isHydraulic,
  lashesOf,
  readSaid,
  testOf,
  wordsOf,
} from './group-words.ts';
import type { SheetRow } from './rows.ts';
import type { Told } from './side-words.ts';

const hasGroups = (side: SheetSideDetail): side is Grouped => side.groups !== undefined;

/** What the arms of a group are all held to be. */
function claimOf(evidence: Evidence, rows: readonly SheetRow[], places: readonly ValvePlace[]) {
  const armOn = (place: ValvePlace) => rows.find((row) => placeOf(row) === placeOf(place))?.armId;
  const claims = new Set(places.map((place) => claimsOn(evidence, armOn(place))[0]?.ratio));
  const [only] = claims;
  return claims.size === 1 ? only : undefined;
}

interface GroupTold extends Told {
  /** Lifts that were not read as they should be, as was answered: nothing is worked out from them. */
  readonly held: readonly SheetHeld[];
}

const NONE: GroupTold = { judgements: [], questions: [], held: [] };

/** With the lash in, the low ones are read short; read another way, those that are off. */
function heldBy(chosen: string, sides: readonly Grouped[]): SheetHeld[] {
  const lack = HELD[chosen];
  if (lack === undefined) return [];
  return sides.flatMap(({ spring, groups: { own, others, off } }) =>
    (chosen === 'lash' && off > 0 ? others : own).map(({ cylinder, valve }) => ({
      cylinder,
      valve,
      spring,
      lack,
    })),
  );
}

function toldOf(evidence: Evidence, rows: readonly SheetRow[], sides: readonly Grouped[]): GroupTold {
  const [first] = sides;
  if (first === undefined) return NONE;
  const { own, others, banks, off } = first.groups;
  const both = sides.length > 1;
  const about: Subject = both ? { of: 'build' } : { of: 'side', valve: sideOfValve(first.side) };
  const places = sides.flatMap(({ groups }) => [...groups.own, ...groups.others]).map(placeOf);
  const restsOn = rows
    .filter((row) => places.includes(placeOf(row)))
    .flatMap(({ lifts }) =>
      lifts.flatMap(({ spring, readings }) => (spring === first.spring ? readings.map(({ id }) => id) : [])),
    )
    .sort();
  const words = wordsOf(evidence, sides, first);
  const id = `group-off:${first.spring}:${both ? 'both' : first.side}:${cylindersOf(own)}`;
  const read = readSaid(words, banks || (own.length === 1 && !both));
  const judgement: Omit<Judgement, 'sentence' | 'lacks'> = {
    id,
    about,
    against: { to: 'siblings' },
    restsOn,
  };
  const [claim, other] = [claimOf(evidence, rows, own), claimOf(evidence, rows, others)];
  if (claim !== undefined && other !== undefined && claim !== other && claim < other === off < 0)
    return {
      judgements: [
        {
          ...judgement,
          sentence: `${read}, and they are held to be ${nominalSaid(claim)} against ${nominalSaid(other)}: two sets of arms.`,
          lacks: [],
        },
      ],
      questions: [],
      held: [],
    };
  const lashes = [...new Set(lashesOf(evidence, sides).map(inches))];
  const lash =
    lashes.length === 0 || isHydraulic(evidence)
      ? ''
      : `The card’s lash of ${listed(lashes)}, left in ${off < 0 ? 'there' : 'the others'}, would make it.`;
  const put = asked(
    {
      code: 'group-off',
      weight: 'weak',
      ask: `${read}. ${isHydraulic(evidence) ? 'Did the lifters sink there' : 'Was the lash left in there'}, or were they read with another indicator base or another spring?`,
      knownBy: `are valves ${cylindersOf(own)} off for what they have in common`,
      size: lash,
      test: testOf(evidence, own, banks),
      restsOn,
    },
    {
      about,
      step: 'sheet',
      among: `${first.spring}-${cylindersOf(own)}`,
      answers: evidence.answers,
      choices: GROUP_CHOICES,
    },
  );
  const question = stillAnswered(evidence, put, { spring: first.spring, own });
  const chosen = chosenOf(question) ?? '';
  const end =
    GROUP_ENDS[chosen] ??
    `${lash === '' ? '' : `${lash} `}First: ask how they were read: ${isHydraulic(evidence) ? 'lifters' : 'lash'}, indicator base, spring.`;
  return {
    judgements: [
      {
        ...judgement,
        sentence: `${read}: no one valve is odd, and what these have in common makes it. ${end}`,
        lacks: [
          chosen === 'not-found'
            ? 'the numbers on their arms, and pushrods and head looked at'
            : 'another reading of one of them, the same way as the others',
        ],
      },
    ],
    questions: [question],
    held: heldBy(chosen, sides),
  };
}

/** Two sides are one thing where the same cylinders are off by as much. */
function isOne([one, other]: readonly Grouped[]): boolean {
  if (one === undefined || other === undefined) return false;
  return (
    cylindersOf(one.groups.own) === cylindersOf(other.groups.own) &&
    Math.abs(one.groups.off - other.groups.off) <= 2 * allowance('repeat')
  );
}

/** Several valves that are off alike: said and asked once, since no one arm makes that. */
export function groupsTold(
  evidence: Evidence,
  rows: readonly SheetRow[],
  sides: readonly SheetSideDetail[],
): GroupTold {
  const grouped = sides.filter(hasGroups);
  const told = [...new Set(grouped.map(({ spring }) => spring))].flatMap((spring) => {
    const own = grouped.filter((side) => side.spring === spring);
    return (isOne(own) ? [own] : own.map((each) => [each])).map((each) => toldOf(evidence, rows, each));
  });
  return {
    judgements: told.flatMap(({ judgements }) => judgements),
    questions: told.flatMap(({ questions }) => questions),
    held: told.flatMap(({ held }) => held),
  };
}
