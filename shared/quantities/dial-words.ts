import { formatFigure, formatNumber } from './format.ts';
import { toldIn } from './spoken-units.ts';

/** How a dial indicator stands. Lengths in inches. */
export interface DialStand {
  readonly perTurn: number;
  /** What the hand has gone in all since zero. */
  readonly gone: number;
  readonly runs: 'clockwise' | 'anticlockwise';
  /** Turns that the small hand showed at zero, the plunger pushed in; left out, it is counted from zero. */
  readonly startedAt?: number | undefined;
  /** What the face is numbered in: inch faces in thousandths, metric ones in hundredths. */
  readonly unit: 'in' | 'mm';
}

/** What is written under a dial, and its text equivalent: of the dial as drawn, and as somebody types. */
export interface DialWords {
  readonly total: string;
  readonly hand: string;
  readonly small: string;
  readonly desc: string;
  /** Whole turns, past the turn, figure under the hand, in all. */
  readonly rows: readonly (readonly [what: string, standsAt: string])[];
  /** Where the small hand stands. */
  readonly position: number;
}

export const faceUnit = (unit: DialStand['unit']): number => (unit === 'in' ? 0.001 : 0.01 / 25.4);

/** Whole turns and what is left of one; a hair under a full turn counts as the turn. */
export function turnsOf(gone: number, perTurn: number): { turns: number; needle: number } {
  const turns = Math.floor(gone / perTurn + 1e-6);
  return { turns, needle: Math.max(0, gone - turns * perTurn) };
}

/** Four places of an inch and three of a millimetre are the finest a bench reads; the last is left off where it is zero. */
export function benchFigure(inches: number, unit: DialStand['unit']): string {
  const value = unit === 'in' ? inches : inches * 25.4;
  const finest = unit === 'in' ? 4 : 3;
  const short = Number(value.toFixed(finest)) === Number(value.toFixed(finest - 1));
  return formatFigure({ value, unit }, { places: short ? finest - 1 : finest });
}

const tenth = (value: number) =>
  formatNumber(value, 1)
    .replace(/^(−?)\./, '$10.')
    .replace(/\.0$/, '');

/** Small dials count ten turns round. */
const ROUND = 10;

/** What the small dial shows of a count of turns that may have gone below zero. */
const onSmallDial = (position: number) => ((position % ROUND) + ROUND) % ROUND;

/**
 * Where the small hand stands: geared to the big one, it goes on as the plunger goes in and back as it comes out, so
 * that from zero it comes down from ten.
 */
function smallAt({ perTurn, gone, runs, startedAt }: DialStand, turns: number) {
  const position = (startedAt ?? 0) + ((runs === 'clockwise' ? 1 : -1) * gone) / perTurn;
  if (startedAt !== undefined)
    return { position, said: `small hand from ${tenth(startedAt)} to ${tenth(onSmallDial(position))}` };
  const said =
    runs === 'clockwise' ? `small hand past ${turns % ROUND}` : `small hand back past ${onSmallDial(-turns)}`;
  return { position, said };
}

export function dialWords(stand: DialStand): DialWords {
  const { perTurn, gone, runs, unit } = stand;
  const { turns, needle } = turnsOf(gone, perTurn);
  const text = (inches: number) => `${benchFigure(inches, unit)} ${toldIn(unit)}`;
  const needleAt = Number((needle / faceUnit(unit)).toFixed(1));
  const places = Number.isInteger(needleAt) ? 0 : 1;
  const numbered = (value: number) => formatNumber(value, places).replace(/^\./, '0.');
  const said = `${turns} ${turns === 1 ? 'turn' : 'turns'} and ${numbered(needleAt)}`;
  // Faces are numbered clockwise: a hand that runs the other way stands on what is left of the turn.
  const whole = perTurn / faceUnit(unit);
  const under = numbered(runs === 'clockwise' ? needleAt : Number(((whole - needleAt) % whole).toFixed(1)));
  const small = smallAt(stand, turns);
  return {
    total: `${said} = ${text(gone)}`,
    hand: `hand runs ${runs}, on ${under}`,
    small: small.said,
    desc: `The hand runs ${runs} and stands ${said} past zero, ${text(gone)} in all, on the figure ${under}; the ${small.said}.`,
    rows: [
      ['Whole turns', String(turns)],
      ['Hand past the turn', text(needle)],
      ['Figure under the hand', under],
      ['In all', text(gone)],
    ],
    position: small.position,
  };
}
