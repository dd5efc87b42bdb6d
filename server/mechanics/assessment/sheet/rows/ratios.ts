import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import { ratioOfFigures, type SheetFigure } from '../../../valve-sheet/figures.ts';
import type { AssessedQuantity, AssessedQuestion } from '../../assessment.ts';
import { type Lack, lacksSaid, toAnswer, toRead, toSay } from '../../common/lack.ts';
import { nominalSaid, placeOf, RATIO_NAMES, valveSubject } from '../../common/said.ts';
import type { Evidence, ValvePlace } from '../../evidence.ts';
import { guessLack, liftHalf } from '../../ratio/read/dial.ts';
import type { SheetHeld, SheetRatioDetail, SheetRatioTold } from './detail.ts';
import { heldOf } from './held.ts';
import type { LiftLot, SheetRow } from './rows.ts';

interface LobeOfRow {
  readonly figure: SheetFigure;
  readonly from: 'read' | 'card';
  readonly half: number;
}

/** The lobe a row's ratio is over: as read, else the card's, which the engine keeps within its allowance. */
function lobeOf(evidence: Evidence, row: SheetRow): LobeOfRow | undefined {
  if (row.lobe !== undefined) return { figure: row.lobe, from: 'read', half: liftHalf(evidence, row.lobes) };
  const value = evidence.card[sideOfValve(row.valve)].lobeLift;
  return value === undefined
    ? undefined
    : { figure: { value, passes: 0 }, from: 'card', half: allowance('card-lobe') };
}

function ratioOf(evidence: Evidence, row: SheetRow, lot: LiftLot): SheetRatioDetail[] {
  const lobe = lobeOf(evidence, row);
  const { value } = lot.figure;
  if (lobe === undefined || (value !== undefined && value <= 0)) return [];
  const ratio = ratioOfFigures(lot.figure, lobe.figure, {
    valve: liftHalf(evidence, lot.readings),
    lobe: lobe.half,
  });
  if (ratio.value === undefined && ratio.low === undefined && ratio.high === undefined) return [];
  const toolSaid = [...lot.readings, ...row.lobes].every(({ tool }) => tool !== 'not-said');
  return [
    {
      cylinder: row.cylinder,
      valve: row.valve,
      spring: lot.spring,
      name: RATIO_NAMES[lot.spring],
      ...ratio,
      lobeFrom: lobe.from,
      toolSaid,
      ...defined({
        lobeLift: lobe.figure.value,
        lash: lot.lash,
        soldAsThen: lot.soldAsThen,
        comesOff: lot.comesOff,
      }),
      quantityId: `sheet:ratio:${lot.spring}:${row.cylinder}-${row.valve}`,
    },
  ];
}

/** The ratio of each row on each spring; a light and a running one are two quantities. */
export const ratiosOf = (evidence: Evidence, rows: readonly SheetRow[]): SheetRatioDetail[] =>
  rows.flatMap((row) => row.lifts.flatMap((lot) => ratioOf(evidence, row, lot)));

const LASH_SAID = { zero: 'zero lash', set: 'lash left in', 'not-said': 'lash not said' } as const;

/** What must be known or done before a ratio of the sheet is believed: doubts of its row, and how it was read. */
function lacksOf(
  ratio: SheetRatioDetail,
  row: SheetRow | undefined,
  { asked, held }: { readonly asked: readonly AssessedQuestion[]; readonly held: readonly string[] },
): Lack[] {
  const lot = row?.lifts.find(({ spring }) => spring === ratio.spring);
  const passes = [
    ...(lot?.figure.lacks ?? []),
    ...(ratio.lobeFrom === 'card' ? [] : (row?.lobe?.lacks ?? [])),
  ];
  return [
    ...asked.map((question) => toAnswer(question, `the answer to “${question.ask}”`)),
    ...held.map((lack) => toRead('another-reading', lack)),
    ...(ratio.spring === 'not-said' ? [toSay('which-spring', 'which spring was on the valve')] : []),
    ...(lot?.lash === 'set' ? [toRead('zero-lash', 'a reading at zero lash: it was left in')] : []),
    ...guessLack(lot?.readings ?? [], 'valve lift'),
    ...(ratio.lobeFrom === 'card' ? [] : guessLack(row?.lobes ?? [], 'lobe lift')),
    ...passes.map((lack) => toRead('passes', lack)),
  ];
}

const rowIn = (rows: readonly SheetRow[], place: ValvePlace): SheetRow | undefined =>
  rows.find((row) => placeOf(row) === placeOf(place));

/** Each with what it waits for. */
export const ratiosTold = (
  ratios: readonly SheetRatioDetail[],
  rows: readonly SheetRow[],
  held: readonly SheetHeld[],
  doubtsOf: (row: SheetRow) => readonly AssessedQuestion[],
): SheetRatioTold[] =>
  ratios.map((ratio) => {
    const row = rowIn(rows, ratio);
    const asked = row === undefined ? [] : doubtsOf(row);
    return { ...ratio, lacks: lacksOf(ratio, row, { asked, held: heldOf(held, ratio, ratio.spring) }) };
  });

/** The same as quantities. One arm is set against its mark in a set-up, where it is said how it was read. */
export function ratioQuantities(
  ratios: readonly SheetRatioTold[],
  rows: readonly SheetRow[],
): AssessedQuantity[] {
  return ratios.map((ratio) => {
    const row = rowIn(rows, ratio);
    const lot = row?.lifts.find(({ spring }) => spring === ratio.spring);
    const { value, low, high } = ratio;
    return {
      id: ratio.quantityId,
      name: ratio.name,
      about: valveSubject(ratio),
      dimension: 'ratio',
      ...defined({ value, low, high }),
      basis: 'measured',
      conditions: [
        ratio.spring === 'not-said' ? 'spring not said' : `${ratio.spring} spring`,
        LASH_SAID[lot?.lash ?? 'not-said'],
        ...(ratio.soldAsThen === undefined
          ? []
          : [`with arms that were sold as ${nominalSaid(ratio.soldAsThen)}`]),
        ...(ratio.lobeFrom === 'card' ? ['lobe lift of the card'] : []),
        ...(ratio.toolSaid ? [] : ['tool not said: ± as of any entry']),
      ],
      lacks: lacksSaid(ratio.lacks),
      restsOn: [...(lot?.readings ?? []), ...(ratio.lobeFrom === 'read' ? (row?.lobes ?? []) : [])]
        .map(({ id }) => id)
        .sort(),
    };
  });
}
