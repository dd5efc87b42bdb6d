import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { ratiosOfBuild } from '../common/build-ratios.ts';
import type { KeptSet } from '../common/kept.ts';
import { keyOfFigures } from '../common/key-of-figures.ts';
import { countingLog } from '../common/newest-lash.ts';
import { inches, listed, listedOr, placeOf } from '../common/said.ts';
import { enteredAt } from '../common/same-day.ts';
import { heatsWanting, isNearLash, printedLashes } from '../common/wanted-heat.ts';
import type { HeatEvidence, PushrodEvidence, TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Evidence, LashEvidence, Side } from '../evidence.ts';
import type { Off } from './off.ts';
import type { TurnMade } from './turn-made.ts';

const toldAt = ({ card: { lashAt } }: Evidence): string => (lashAt === undefined ? '' : `, ${lashAt}`);

const cardSaid = (evidence: Evidence, printed: readonly number[]): string =>
  `The card’s lash is ${listed(printed.map(inches))}${toldAt(evidence)}`;

/** The sides that the turn is for, as far as the log knows its valves. */
const sidesOf = ({ waiting, made }: TurnMade): Side[] => [
  ...new Set([...waiting, ...made].map(({ valve }) => sideOfValve(valve))),
];

/** A turn to another lash than the card of its valve’s side has, hot or cold. */
export function wantedOff(
  { lashWanted }: Pick<TurnsEvidence, 'lashWanted'>,
  made: TurnMade,
  evidence: Evidence,
): Off[] {
  if (lashWanted === undefined) return [];
  const known = sidesOf(made);
  const isWanted = (sides: readonly Side[]) =>
    printedLashes(evidence, sides).length === 0 ||
    printedLashes(evidence, sides).some((each) => isNearLash(each, lashWanted)) ||
    heatsWanting(lashWanted, evidence, sides).length > 0;
  // Of which valve it is nobody knows: then it may be of either side.
  const fits = known.length === 0 ? isWanted(SIDES) : known.every((side) => isWanted([side]));
  if (fits) return [];
  const printed = printedLashes(evidence, known.length === 0 ? SIDES : known);
  return [
    {
      said: `${cardSaid(evidence, printed)}; the sum wants ${inches(lashWanted)}.`,
      key: keyOfFigures('lash', ...printed, lashWanted),
    },
  ];
}

/** A solid lifter has no plunger to press, and wants its lash out of the pushrod’s length. */
export function solidOff({ added = 0, lashOff }: PushrodEvidence, evidence: Evidence): Off[] {
  if (evidence.engine.lifter === undefined) return [];
  const printed = printedLashes(evidence).filter((lash) => lash > 0);
  const pressed: Off[] =
    added > 0
      ? [
          {
            said: `The build says solid lifters; ${inches(added)} of preload was added to the length.`,
            key: keyOfFigures('solid', added),
          },
        ]
      : [];
  if (lashOff === true || printed.length === 0) return pressed;
  return [
    ...pressed,
    {
      said: `${cardSaid(evidence, printed)}; no lash was taken off the length.`,
      key: keyOfFigures('no-lash', ...printed),
    },
  ];
}

/** A pushrod that another lash was taken off than the card has. */
export function takenOff({ lash, less }: PushrodEvidence, evidence: Evidence): Off[] {
  const printed = printedLashes(evidence);
  const atPushrod = less === undefined ? [] : ratiosOfBuild(evidence).map((ratio) => less * ratio);
  const all = lash === undefined ? atPushrod : [lash];
  const [off] = all;
  const fits = printed.some((each) => all.some((taken) => isNearLash(each, taken)));
  if (off === undefined || printed.length === 0 || fits) return [];
  const atValve =
    lash === undefined
      ? ` at the pushrod, ${listedOr([...new Set(all.toSorted((a, b) => a - b).map(inches))])} at the valve`
      : '';
  return [
    {
      said: `${cardSaid(evidence, printed)}; the sum took ${inches(lash ?? less ?? 0)}${atValve} off.`,
      key: keyOfFigures('lash', ...printed, off),
    },
  ];
}

interface Found {
  readonly gap: number;
  readonly engine: LashEvidence['engine'];
}

/** Gaps that the log has found, and not hot, since they were last set before the sum was kept. */
function foundCold(evidence: Evidence, kept: number): Found[] {
  const places = new Map(evidence.lash.map((line) => [placeOf(line), line]));
  return [...places.values()].flatMap((place) => {
    const log = countingLog(evidence, place);
    const set = log.findLastIndex((line) => line.moment === 'set' && enteredAt(line) < kept);
    return log
      .slice(set + 1)
      .flatMap(({ moment, engine, gap: { value } }) =>
        moment === 'found' && engine !== 'hot' && value !== undefined ? [{ gap: value, engine }] : [],
      );
  });
}

function foundSaid(found: readonly Found[]): string {
  const at = (heat: Found['engine'], said: string): string[] => {
    const gaps = found.filter(({ engine }) => engine === heat).map(({ gap }) => inches(gap));
    return gaps.length === 0 ? [] : [`${listed([...new Set(gaps)])} found ${said}`];
  };
  return listed([...at('cold', 'cold'), ...at('not-said', 'with the heat not said')]);
}

/** A gap found cold that the log has nowhere. */
export function foundOff(
  { set: { found }, line }: Pick<KeptSet<HeatEvidence>, 'set' | 'line'>,
  evidence: Evidence,
): Off[] {
  const log = foundCold(evidence, line);
  if (found === undefined || log.length === 0 || log.some(({ gap }) => isNearLash(gap, found.cold)))
    return [];
  const gaps = log.map(({ gap }) => gap);
  return [
    {
      said: `The log has ${foundSaid(log)}; the sum was made from ${inches(found.cold)}.`,
      key: keyOfFigures('found', ...gaps, found.cold),
    },
  ];
}

/** A hot lash that is not the card’s, or that the card gives for a cold engine. */
export function hotOff({ hot, cold }: HeatEvidence, evidence: Evidence): Off[] {
  const printed = printedLashes(evidence);
  const isPrinted = (lash: number) => printed.some((each) => isNearLash(each, lash));
  const isCold = evidence.card.lashAt === 'cold';
  if (printed.length === 0 || (isCold ? isPrinted(cold) || !isPrinted(hot) : isPrinted(hot))) return [];
  return [
    {
      said: `${cardSaid(evidence, printed)}; the sum took ${inches(hot)} for hot.`,
      key: keyOfFigures(isCold ? 'cold-lash' : 'lash', ...printed, hot),
    },
  ];
}
