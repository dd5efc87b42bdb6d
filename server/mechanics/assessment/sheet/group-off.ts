import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import type { Judgement } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';
import { nominalSaid, placeOf } from '../common/said.ts';
import type { Evidence, Spring, ValvePlace } from '../evidence.ts';
import { claimOfRow } from './claim-of-row.ts';
import type { SheetHeld, SheetSideDetail } from './detail.ts';
import { cardLash, type Group, groupAsked } from './group-asked.ts';
import {
  cylindersOf,
  GROUP_ENDS,
  type Grouped,
  HELD,
  isHydraulic,
  readSaid,
  wordsOf,
} from './group-words.ts';
import type { SheetRow } from './rows.ts';
import type { Told } from './side-words.ts';

const hasGroups = (side: SheetSideDetail): side is Grouped => side.groups !== undefined;

/** What the arms of a group are all held to be. */
function claimOf(
  evidence: Evidence,
  rows: readonly SheetRow[],
  places: readonly ValvePlace[],
  spring: Spring,
): number | undefined {
  const rowOf = (place: ValvePlace) => rows.find((row) => placeOf(row) === placeOf(place));
  const claims = new Set(places.map((place) => claimOfRow(evidence, rowOf(place), spring)?.ratio));
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

function groupOf(
  evidence: Evidence,
  rows: readonly SheetRow[],
  sides: readonly Grouped[],
  first: Grouped,
): Group {
  const places = sides.flatMap(({ groups }) => [...groups.own, ...groups.others]).map(placeOf);
  const restsOn = rows
    .filter((row) => places.includes(placeOf(row)))
    .flatMap(({ lifts }) =>
      lifts.flatMap(({ spring, readings }) => (spring === first.spring ? readings.map(({ id }) => id) : [])),
    )
    .sort();
  const { own, banks } = first.groups;
  const isBoth = sides.length > 1;
  return {
    first,
    own,
    about: isBoth ? { of: 'build' } : { of: 'side', valve: sideOfValve(first.side) },
    read: readSaid(wordsOf(evidence, sides, first), banks || (own.length === 1 && !isBoth)),
    restsOn,
  };
}

/** What the arms of the two groups are held to be, where that is why they read apart. */
function twoSets(evidence: Evidence, rows: readonly SheetRow[], { first, own }: Group): string | undefined {
  const { others, off } = first.groups;
  const [claim, other] = [own, others].map((each) => claimOf(evidence, rows, each, first.spring));
  if (claim === undefined || other === undefined || claim === other) return undefined;
  const [isHeldLower, readsLower] = [claim < other, off < 0];
  if (isHeldLower !== readsLower) return undefined;
  return `${nominalSaid(claim)} against ${nominalSaid(other)}`;
}

function toldOf(evidence: Evidence, rows: readonly SheetRow[], sides: readonly Grouped[]): GroupTold {
  const [first] = sides;
  if (first === undefined) return NONE;
  const group = groupOf(evidence, rows, sides, first);
  const { own, about, read, restsOn } = group;
  const which = sides.length > 1 ? 'both' : first.side;
  const judgement: Omit<Judgement, 'sentence' | 'lacks'> = {
    id: `group-off:${first.spring}:${which}:${cylindersOf(own)}`,
    about,
    against: { to: 'siblings' },
    restsOn,
  };
  const sets = twoSets(evidence, rows, group);
  if (sets !== undefined) {
    const sentence = `${read}, and they are held to be ${sets}: two sets of arms.`;
    return { ...NONE, judgements: [{ ...judgement, sentence, lacks: [] }] };
  }
  const lash = cardLash(evidence, sides, first.groups.off);
  const question = groupAsked(evidence, group, lash, (answer) => heldBy(answer, sides));
  const chosen = chosenOf(question) ?? '';
  const end =
    GROUP_ENDS[chosen] ??
    `${lash === '' ? '' : `${lash} `}First: ask how they were read: ${isHydraulic(evidence) ? 'lifters' : 'lash'}, indicator base, spring.`;
  const lack =
    chosen === 'not-found'
      ? 'the numbers on their arms, and pushrods and head looked at'
      : 'another reading of one of them, the same way as the others';
  const sentence = `${read}: no one valve is odd, and what these have in common makes it. ${end}`;
  return {
    judgements: [{ ...judgement, sentence, lacks: [lack] }],
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
