import { EQUAL } from '../../kit/nearest.ts';
import { MM } from '../../kit/si.ts';
import { endsOf } from '../../lash/growth.ts';
import type { Headline, NotToRun } from '../assessment.ts';
import { lacksSaid } from '../common/lack.ts';
import { keyOf, listed, placeOf, upperFirst, valveSubject, withFigure } from '../common/said.ts';
import type { Bounds } from '../evidence.ts';
import { BURNS, notRunSaid } from './burns.ts';
import type { ShimRow } from './detail.ts';

/** `2.65 mm`: shims are made and marked in hundredths of a millimetre, also where a call speaks inches. */
export const millimetres = (si: number): string => {
  const hundredths = Math.round(Number(((si / MM) * 100).toPrecision(12)));
  return `${(hundredths / 100).toFixed(2)} mm`;
};

type Said = Omit<ShimRow, 'sentence'>;

/** A gap that cannot be felt. */
export const isShut = ({ found }: Pick<ShimRow, 'found'>): boolean => (endsOf(found).high ?? 1) <= EQUAL;

/** `0.33 mm`, `0.33 to 0.36 mm` */
export function gapInMm(gap: Bounds): string {
  const { low, high } = endsOf(gap);
  if (low !== undefined && high !== undefined && high - low > EQUAL)
    return `${millimetres(low).replace(' mm', '')} to ${millimetres(high)}`;
  return millimetres(low ?? high ?? 0);
}

/** The lash that a shim leaves, as far as the gap was known. */
export const leavesSaid = ({ lash, between }: NonNullable<ShimRow['choice']>): string =>
  gapInMm(between ?? { value: lash });

function fromSaid({ choice }: Said): string {
  const { fromValve } = choice ?? {};
  return fromValve === undefined ? 'from stock' : `from ${placeOf(fromValve)}`;
}

/** One that is right may give its shim to another all the same. */
function howItIs({ found, right, fitted = 0, givesTo }: Said, wanted: number): string {
  if (right === true && givesTo !== undefined)
    return `right, but its ${millimetres(fitted)} goes to ${placeOf(givesTo)}`;
  return (endsOf(found).low ?? 0) < wanted ? 'too tight' : 'too wide';
}

/** What is to be had; from a gap between two feelers no finer than they tell. */
function toHaveSaid({ found, toHave = 0 }: Said): string {
  const { low = 0, high = 0 } = endsOf(found);
  const half = (high - low) / 2;
  return half <= EQUAL ? millimetres(toHave) : gapInMm({ low: toHave - half, high: toHave + half });
}

const CLOSER = 'read the gap with closer feelers before one is ordered';
const isBetween = ({ found }: Said): boolean => {
  const { low = 0, high = 0 } = endsOf(found);
  return high - low > EQUAL;
};

/** What goes in, or what has to be had first: one of the two, never both. */
function goesIn(row: Said, fitted: number, withStock: boolean): string {
  const { choice, toHave, beside = [] } = row;
  if (toHave !== undefined) {
    const each = beside.map(({ shim, lash }) => `${millimetres(shim)} leaves ${millimetres(lash)}`);
    const there = each.length === 0 ? '' : ` (${each.join(', ')})`;
    const none = withStock ? `none on record comes near enough${there}` : 'no stock is on record';
    return `It wants ${toHaveSaid(row)} for its ${millimetres(fitted)}; ${none}${isBetween(row) ? `: ${CLOSER}` : ', so one is to be ordered'}.`;
  }
  if (choice === undefined) return '';
  return `${millimetres(choice.shim)} ${fromSaid(row)} goes in for its ${millimetres(fitted)}, which leaves ${leavesSaid(choice)}.`;
}

/** One valve in a sentence. */
export function shimSentence(row: Said, withStock: boolean): string {
  const { fitted, found, wanted, lacks, choice, toHave } = row;
  const at = upperFirst(placeOf(row));
  if (isShut(row))
    return `${at}: no gap found, so the valve may be held off its seat. A thinner shim goes in first; then the gap is measured.`;
  if (lacks.length > 0 || fitted === undefined || wanted === undefined)
    return `${at}: no shim is worked out yet. It lacks ${listed(lacksSaid(lacks))}.`;
  const gap = `${at}: ${gapInMm(found)} found, ${millimetres(wanted)} wanted`;
  if (choice?.from === 'own' && toHave === undefined)
    return `${gap}: near enough. Its own ${millimetres(fitted)} shim stays.`;
  return `${gap}: ${howItIs(row, wanted)}. ${goesIn(row, fitted, withStock)}`;
}

const ABOUT = { of: 'build' } as const;
/** More than so many are read off the table. */
const FEW = 3;

const headline = (code: string, sentence: string): Headline => ({
  id: `headline:shims:${code}`,
  about: ABOUT,
  step: 'adjuster',
  sentence,
});

const count = (rows: readonly Said[], many: string): string =>
  rows.length === 1 ? '1 valve' : `${rows.length} ${many}`;

/** `1 intake 2.50 mm and 2 intake 2.45 mm`, or how many there are. */
function named(rows: readonly Said[], thickness: (row: Said) => string): string {
  if (rows.length > FEW) return count(rows, 'valves');
  return listed(rows.map((row) => withFigure(row, thickness(row))));
}

const rightAsItIs = (valves: number): string =>
  valves === 1 ? 'The shim of 1 valve stays.' : `The shims of ${valves} valves stay.`;

/** Valves that were right as they were found, and take another shim so that theirs serves another. */
function givenSaid(rows: readonly Said[]): string[] {
  const right = rows.filter((row) => row.right === true);
  const giving = right.filter(({ givesTo }) => givesTo !== undefined);
  if (giving.length === 0) return [];
  return [
    `${right.length} of ${rows.length} were right as found; of these ${giving.length} ${giving.length === 1 ? 'gives its shim' : 'give their shims'} to another valve.`,
  ];
}

function changed(rows: readonly Said[]): Headline[] {
  const whole = rows.filter(({ lacks }) => lacks.length === 0);
  const ready = whole.filter(({ choice, toHave }) => toHave === undefined && choice?.from !== 'own');
  const stay = whole.filter(({ choice, toHave }) => toHave === undefined && choice?.from === 'own');
  const order = whole.filter(({ toHave }) => toHave !== undefined);
  if (whole.length === 0) return [];
  const parts = [
    ...(ready.length === 0
      ? []
      : [`Shims to fit: ${named(ready, ({ choice }) => millimetres(choice?.shim ?? 0))}.`]),
    ...(order.length === 0 ? [] : [`Shims to order: ${named(order, toHaveSaid)}.`]),
    ...(order.some(isBetween) ? [`First ${CLOSER}.`] : []),
    ...(stay.length === 0 ? [] : [rightAsItIs(stay.length)]),
    ...givenSaid(whole),
  ];
  return [headline('wanted', parts.join(' '))];
}

/** What is told first of the shims: a valve that may be held open, what goes in, and what is not known yet. */
export function shimHeadlines(rows: readonly ShimRow[]): Headline[] {
  const shut = rows.filter(isShut);
  const lacking = rows.filter((row) => row.lacks.length > 0 && !isShut(row));
  const [first] = lacking;
  return [
    ...(shut.length === 0
      ? []
      : [headline('no-gap', `No gap found at ${listed(shut.map(placeOf))}: ${BURNS} It is not run so.`)]),
    ...changed(rows),
    ...(first === undefined
      ? []
      : [
          headline(
            'lacking',
            `No shim yet for ${lacking.length > FEW ? count(lacking, 'valves') : listed(lacking.map(placeOf))}. First: ${first.lacks[0]?.said ?? ''}.`,
          ),
        ]),
  ];
}

/** A valve without a gap may stand open: it is not run until there is one. */
export const heldOpen = (row: ShimRow): NotToRun[] =>
  isShut(row)
    ? [
        {
          id: `not-to-run:no-gap:${keyOf(valveSubject(row))}`,
          what: 'run',
          about: valveSubject(row),
          sentence: notRunSaid(row),
          todo: { action: 'thinner-shim', step: 'adjuster' },
          wayOut: 'A thinner shim goes in first; then the gap is measured, and the right shim worked out.',
        },
      ]
    : [];
