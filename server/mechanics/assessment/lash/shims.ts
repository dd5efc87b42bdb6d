import { defined } from '../../../../shared/defined.ts';
import { InputFaults } from '../../../../shared/problems/faults.ts';
import { formatNumber } from '../../../../shared/quantities/format.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { computation as lashShim } from '../../computations/lash-shim.ts';
import { allowance, toolAllowance } from '../../kit/allowances.ts';
import { MM } from '../../kit/si.ts';
import { chooseShims, type ShimChosen } from '../../lash/choose-shims.ts';
import type { AssessedQuantity } from '../assessment.ts';
import { lashLogOf } from '../common/newest-lash.ts';
import { byPlace, keyOf, listed, placeOf, upperFirst, valveSubject } from '../common/said.ts';

import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import type { ShimRow, ShimsDetail } from './detail.ts';

/** `2.65 mm`: shims are made and marked in hundredths of a millimetre. */
export const millimetres = (si: number): string => `${formatNumber(Number((si / MM).toPrecision(12)), 2)} mm`;

type Known = Omit<ShimRow, 'choice' | 'sentence'>;

/** Setting a gap takes another shim: what was in before is not what is in now. */
function fittedIn(lines: readonly LashEvidence[]): number | undefined {
  const newest = lines.at(-1);
  if (newest?.shim !== undefined || newest?.moment === 'set') return newest.shim;
  const last = lines.findLast(({ shim, moment }) => shim !== undefined || moment === 'set');
  return last?.shim;
}

function lacksOf(
  { engine }: LashEvidence,
  { card }: Evidence,
  known: Pick<Known, 'fitted' | 'found' | 'wanted'>,
): string[] {
  const { fitted, found, wanted } = known;
  return [
    ...(fitted === undefined ? ['the shim that is in, measured itself'] : []),
    ...(found.value === undefined ? ['the gap as one figure'] : []),
    // Nobody knows by how much more than nothing the valve is held open.
    ...(found.value === 0
      ? ['a gap to measure: with none, the valve may be held off its seat. Make one first']
      : []),
    ...(wanted === undefined ? ['the lash that is wanted, from the card'] : []),
    ...(engine === 'not-said' ? ['whether the gap was read cold or hot'] : []),
    ...(card.lashAt === undefined ? ['whether the card’s lash is for a cold or a hot engine'] : []),
    ...(engine !== 'not-said' && card.lashAt !== undefined && engine !== card.lashAt
      ? [`the gap with the engine ${card.lashAt}, as the card’s lash is for`]
      : []),
  ];
}

function shimOf({ fitted, found, wanted }: Pick<Known, 'fitted' | 'found' | 'wanted'>) {
  if (fitted === undefined || found.value === undefined || wanted === undefined) return {};
  try {
    const { shim } = lashShim.compute({ shimFitted: fitted, lashFound: found.value, lashWanted: wanted });
    return { shim };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return { refused: 'figures that go together: this lash would want a shim of no thickness' };
  }
}

function knownOf(evidence: Evidence, place: ValvePlace): Known[] {
  const lines = lashLogOf(evidence, place);
  const newest = lines.at(-1);
  if (newest === undefined) return [];
  const wanted = evidence.card[sideOfValve(place.valve)].lash;
  const figures = { found: newest.gap, ...defined({ fitted: fittedIn(lines), wanted }) };
  const { shim, refused } = shimOf(figures);
  return [
    {
      cylinder: place.cylinder,
      valve: place.valve,
      ...figures,
      lacks: [...lacksOf(newest, evidence, figures), ...(refused === undefined ? [] : [refused])],
      entryId: newest.id,
      ...defined({ shim }),
    },
  ];
}

const whichWay = (fitted: number, shim: number): string =>
  Math.abs(shim - fitted) <= allowance('lash-as-set')
    ? 'near enough, the shim that is in is right'
    : shim < fitted
      ? `too little, so it wants a thinner shim, ${millimetres(shim)} in place of ${millimetres(fitted)}`
      : `too much, so it wants a thicker shim, ${millimetres(shim)} in place of ${millimetres(fitted)}`;

/** Which shim goes in; one that leaves the gap off by more than is left as it is, is ordered first. */
function chosenSaid(
  choice: ShimChosen | undefined,
  { shim: wants = 0, wanted = 0, fitted = 0 }: Known,
  places: readonly ValvePlace[],
): string {
  const order = `Order ${millimetres(wants)}.`;
  if (choice === undefined) return `${order} None that is there leaves a gap.`;
  const { shim, lash, from } = choice;
  const gives = `gives ${millimetres(lash)}`;
  const place = typeof from === 'number' ? places[from] : undefined;
  const source = place === undefined ? 'from stock' : `from ${placeOf(place)}`;
  const near = Math.abs(lash - wanted) <= allowance('lash-as-set') + 1e-9;
  if (from === 'own') {
    if (Math.abs(wants - fitted) <= allowance('lash-as-set')) return `It stays, which ${gives}.`;
    return near ? `Its own shim may stay, which ${gives}.` : `${order} None that is there comes nearer.`;
  }
  return near
    ? `Fit ${millimetres(shim)} ${source}, which ${gives}.`
    : `${order} The nearest there, ${millimetres(shim)} ${source}, ${gives}.`;
}

function sentenceOf(known: Known, choice: ShimChosen | undefined, places: readonly ValvePlace[]): string {
  const { fitted, found, wanted, shim, lacks } = known;
  const at = upperFirst(placeOf(known));
  if (lacks.length > 0 || fitted === undefined || wanted === undefined || shim === undefined)
    return `${at}: no shim is worked out yet. It lacks ${listed(lacks)}.`;
  const gap = millimetres(found.value ?? 0);
  return `${at}: ${gap} found, ${millimetres(wanted)} wanted: ${whichWay(fitted, shim)}. ${chosenSaid(choice, known, places)}`;
}

/** The shim that each valve wants, as far off as the feeler is. */
const quantity = ({ cylinder, valve, shim, lacks, entryId }: ShimRow): AssessedQuantity[] => {
  if (shim === undefined || lacks.length > 0) return [];
  const off = toolAllowance('feeler');
  const about = valveSubject({ cylinder, valve });
  return [
    {
      id: `shim:${keyOf(about)}`,
      name: 'Lash shim wanted',
      about,
      dimension: 'length',
      value: shim,
      low: shim - off,
      high: shim + off,
      basis: 'calculated',
      conditions: ['bucket with a shim'],
      lacks: [],
      restsOn: [entryId],
    },
  ];
};

/**
 * The shim of every valve of a bucket engine in the lash log, out of those that are there together.
 *
 * @param evidence everything on the record, in SI
 * @returns a row for each valve that has a lash, and the quantities of those that are complete
 *
 * Validity: solid buckets with a shim over or under; the gap read on the base circle.
 * Source: `lash-shim` and `chooseShims`; a lash left as it is within its allowance, see the seeds.
 */
export function shimsOf(evidence: Evidence): {
  readonly detail: ShimsDetail;
  readonly quantities: readonly AssessedQuantity[];
} {
  const { gear, lifter, shimStock: stock = [] } = evidence.engine;
  const within = allowance('lash-as-set');
  if (gear !== 'bucket' || lifter?.startsWith('hydraulic') === true)
    return { detail: { within, rows: [] }, quantities: [] };
  const standing = evidence.lash.filter((line) => line.standing).toSorted(byPlace);
  const places = [...new Map(standing.map((line) => [placeOf(line), line])).values()];
  const all = places.flatMap((place) => knownOf(evidence, place));
  const complete = all.filter(({ lacks }) => lacks.length === 0);
  const wants = complete.flatMap(({ fitted, found, wanted }) =>
    fitted === undefined || found.value === undefined || wanted === undefined
      ? []
      : [{ fitted, found: found.value, wanted }],
  );
  const chosen = chooseShims(wants, stock, within);
  const rows = all.map((known): ShimRow => {
    const at = complete.indexOf(known);
    const choice = at < 0 ? undefined : chosen[at];
    const from = typeof choice?.from === 'number' ? complete[choice.from] : undefined;
    return {
      ...known,
      ...(choice === undefined
        ? {}
        : {
            choice: {
              shim: choice.shim,
              lash: choice.lash,
              from: choice.from === 'own' ? 'own' : choice.from === 'stock' ? 'stock' : 'valve',
              ...(from === undefined ? {} : { fromValve: { cylinder: from.cylinder, valve: from.valve } }),
            },
          }),
      sentence: sentenceOf(known, choice, complete),
    };
  });
  return { detail: { within, rows }, quantities: rows.flatMap(quantity) };
}
