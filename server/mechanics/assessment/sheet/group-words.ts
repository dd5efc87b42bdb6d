import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { banksOf } from '../../valve-sheet/orders.ts';
import type { AnswerChoice } from '../assessment.ts';
import { lashMakesIt } from '../common/lash-makes-it.ts';
import { byPlace, listed, lowOrHigh, placeOf, upperFirst } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import type { SheetGroups, SheetSideDetail } from './detail.ts';
import { placesSaid } from './rows-to-read.ts';

/** The word of the question what several valves that are off have in common. */
export const GROUP_OFF = 'group-off';

export const GROUP_CHOICES: readonly AnswerChoice[] = [
  {
    code: 'lash',
    label: 'The lash was in there',
    changes: 'They are read again at zero lash; the others are struck out with the reason.',
  },
  {
    code: 'set-up',
    label: 'Read with another base, spring or dial',
    changes: 'They are read again as the others were; what was read otherwise is struck out with the reason.',
  },
  {
    code: 'not-found',
    label: 'Looked: all were read alike',
    changes: 'Then it is what they have in common: their arms, pushrods or head.',
  },
];

export const GROUP_ENDS: Readonly<Record<string, string>> = {
  lash: 'The lash was in, as was answered. First: another reading of them at zero lash.',
  'set-up': 'They were not read like the others, as was answered. First: another reading of them.',
  'not-found':
    'All were read alike, so it is what these have in common: look at the numbers on their arms, then pushrods and head.',
};

/** What they lack then, before anything is worked out from them. */
export const HELD: Readonly<Record<string, string>> = {
  lash: 'another reading at zero lash: the lash was in it, as was answered',
  'set-up': 'another reading: base, spring or dial was another, as was answered',
};

/** A side whose valves fall into two groups; of both sides of the engine, where the same cylinders are off. */
export type Grouped = SheetSideDetail & { readonly groups: SheetGroups };

export const isHydraulic = ({ engine }: Evidence): boolean => isHydraulicLifter(engine.lifter);

const numbersOf = (places: readonly ValvePlace[]): string[] =>
  [...new Set(places.map(({ cylinder }) => cylinder))].sort((a, b) => a - b).map(String);

export const cylindersOf = (places: readonly ValvePlace[]): string => numbersOf(places).join('-');

/** `bank 2-4-6-8`, as the engine's own order of its banks has it. */
function bankSaid({ engine }: Evidence, places: readonly ValvePlace[]): string {
  const bank = banksOf(engine.bankOrder, engine.cylinders ?? 0).find((each) =>
    places.every(({ cylinder }) => each.includes(cylinder)),
  );
  return `bank ${bank?.join('-') ?? cylindersOf(places)}`;
}

const meanOff = (sides: readonly Grouped[]): number =>
  sides.reduce((sum, { groups }) => sum + groups.off, 0) / sides.length;

/** The card’s lash on each side, where left in the lower ones it makes it. */
export const lashesOf = ({ card }: Evidence, sides: readonly Grouped[]): number[] => {
  const found = sides.flatMap(({ side, groups }) => {
    const { lash } = card[sideOfValve(side)];
    if (lash === undefined || lash <= 0) return [];
    return lashMakesIt(Math.abs(groups.off), lash) ? [lash] : [];
  });
  return found.length === sides.length ? found : [];
};

interface Words {
  readonly who: string;
  readonly against: string;
  readonly by: string;
  readonly sides: string;
}

export function wordsOf(evidence: Evidence, sides: readonly Grouped[], first: Grouped): Words {
  const { banks, own, others } = first.groups;
  const by = lowOrHigh(meanOff(sides));
  if (!banks)
    return {
      who: sides.length > 1 ? `${listed(numbersOf(own))}, intake and exhaust,` : placesSaid(own),
      against: `the other ${others.length}${sides.length > 1 ? ' of each side' : ''}`,
      by,
      sides: '',
    };
  return {
    who: bankSaid(evidence, own),
    against: bankSaid(evidence, others),
    by,
    sides: sides.length > 1 ? ', intakes and exhausts alike' : ` on its ${sideOfValve(first.side)}s`,
  };
}

/** `Bank 2-4-6-8 reads .016 in low against bank 1-3-5-7, intakes and exhausts alike` */
export const readSaid = ({ who, against, by, sides }: Words, banks: boolean): string =>
  `${upperFirst(who)} ${banks ? 'reads' : 'read'} ${by} against ${against}${sides}`;

export function testOf(evidence: Evidence, own: readonly ValvePlace[], banks: boolean): string {
  const [one] = own.toSorted(byPlace);
  const how = isHydraulic(evidence) ? 'on a solid or locked lifter' : 'at zero lash';
  return `ask how ${banks ? 'each bank was' : 'those and the others were'} read; then read ${one === undefined ? 'one of them' : placeOf(one)} once more ${how}, with indicator base and spring as ${banks ? 'on the other bank' : 'for the others'}`;
}
