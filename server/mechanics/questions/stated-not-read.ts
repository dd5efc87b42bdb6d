import { between, within } from './compare.ts';
import { idsOf, liftsOf, lobeInUse } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { changeText, inch } from './words.ts';

/** What was read, and what is on record in the sum for it. */
interface Pair {
  readonly stated: number | undefined;
  readonly read: readonly number[];
  readonly from: string;
  readonly lobe: number | undefined;
  readonly restsOn: readonly string[];
}

function pairsOf(input: QuestionInput): Pair[] {
  const card = input.cardLobeLift;
  const fromCard = input.lobeSource === 'card' && card !== undefined;
  return [
    {
      stated: input.statedValveLift,
      read: liftsOf(input.valvePasses),
      from: 'The passes say',
      lobe: lobeInUse(input),
      restsOn: idsOf(input.valvePasses),
    },
    {
      stated: input.statedLobeLift,
      read: fromCard ? [card] : liftsOf(input.lobePasses),
      from: fromCard ? 'The card says' : 'The passes at the lobe say',
      lobe: undefined,
      restsOn: fromCard ? [] : idsOf(input.lobePasses),
    },
  ];
}

function rangeText(low: number, high: number): string {
  const [from, to] = [inch(low), inch(high)];
  return from === to ? from : `${from} to ${to}`;
}

function askPair(pair: Pair, t: Tolerances): Question[] {
  const { stated, read } = pair;
  if (stated === undefined || read.length === 0) return [];
  const low = Math.min(...read);
  const high = Math.max(...read);
  const end = stated < low ? low : high;
  // A number ten times off is a matter of point or unit.
  if (between(stated, low, high) || !between(stated / end, 0.5, 2)) return [];
  if (within(stated - end, t.statedOffDoubtful)) return [];
  return [
    {
      code: 'stated-not-read',
      weight: within(stated - end, t.statedOff) ? 'weak' : 'strong',
      ask: `Where does ${inch(stated)} come from? ${pair.from} ${rangeText(low, high)}.`,
      size: changeText(stated, end, pair.lobe),
      test: 'Read the passes out again, and calculate with what was read.',
      restsOn: pair.restsOn,
    },
  ];
}

/** A number used that is not the number read. */
export function statedNotRead(input: QuestionInput, tolerances: Tolerances): Question[] {
  return pairsOf(input).flatMap((pair) => askPair(pair, tolerances));
}
