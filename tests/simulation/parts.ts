import { chanceFrom } from '../mechanics/explain-readings/random.ts';
import { type Followed, followCalls, type Names } from './follow-call.ts';
import { type ReadingSet, scoreRows } from './score-rows.ts';
import { meanOf, type Scored, scored } from './shares.ts';
import { plain, told } from './told.ts';

/** Figures of the design note. Source: inference.md, "Simulated call", an independent implementation. */
const ROWS: Readonly<Record<ReadingSet, readonly string[]>> = {
  1: ['.693', '.952', '.060', '.81: .79', '.97: .97'],
  5: ['.749', '.933', '.030', '.79: .81', '.97: .95'],
  L: ['.826', '.953', '.030', '.78: .82', '.98: .97'],
};

function ofRows(found: Scored, note: readonly string[]): string[] {
  return [
    told('name right', found.nameRight, note[0]),
    told('ratio held', found.ratioHeld, note[1]),
    plain('half-width, share', found.halfWidth, note[2]),
    told(`said .7 to .9 (${found.said70.said.toFixed(2)})`, found.said70.right, note[3]),
    told(`said .9 and more (${found.said90.said.toFixed(2)})`, found.said90.right, note[4]),
  ];
}

const words = (found: Scored): string[] => [
  told('“agrees” true', found.agreesTrue, '.98'),
  told('“differs” true', found.differsTrue, '1'),
];

export function rows(calls: number, seed: number): string[] {
  return (['1', '5', 'L'] as const).flatMap((set) => {
    const { ofNote, ofCall } = scoreRows(set, calls, seed);
    return [
      `readings ${set}, ${calls} calls, seed ${seed}, names of the note`,
      ...ofRows(ofNote, ROWS[set]),
      `readings ${set}, as the call has it`,
      ...ofRows(ofCall, []),
      ...words(ofCall),
    ];
  });
}

function ofFollowed(found: readonly Followed[], names: Names): string[] {
  const all = scored(found);
  return [
    plain('readings more', meanOf(found.map(({ steps }) => steps)), '3.3'),
    plain('minutes', meanOf(found.map(({ minutes }) => minutes)), '29'),
    told('name right', all.nameRight, '.892'),
    told('ratio held', all.ratioHeld, '.959'),
    told('within 1.5 %', all.near, '.973'),
    told('settled', all.settled, '.47'),
    told('settled right', all.settledRight, '.971'),
    ...(names === 'of-call' ? words(all) : []),
  ];
}

export const followed = (calls: number, seed: number): string[] =>
  (['of-note', 'of-call'] as const).flatMap((names) => [
    `followed to the end, ${calls} calls, seed ${seed}, ${names === 'of-note' ? 'names of the note' : 'as the call has it'}`,
    ...ofFollowed(followCalls(chanceFrom(seed), calls, names), names),
  ]);
