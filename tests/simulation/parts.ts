import { chanceFrom } from '../mechanics/explain-readings/random.ts';
import { type DeskFollowed, followDesks } from './desk-call.ts';
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
  told('“agrees” by band true', found.agreesByBand),
  told('“differs” by band true', found.differsByBand),
];

export function* rows(calls: number, seed: number): Generator<string> {
  for (const set of ['1', '5', 'L'] as const) {
    const { ofNote, ofCall } = scoreRows(set, calls, seed);
    yield `readings ${set}, ${calls} calls, seed ${seed}, names of the note`;
    yield* ofRows(ofNote, ROWS[set]);
    yield `readings ${set}, as the call has it`;
    yield* ofRows(ofCall, []);
    yield* words(ofCall);
  }
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

export function* followed(calls: number, seed: number): Generator<string> {
  for (const names of ['of-note', 'of-call'] as const) {
    const whose = names === 'of-note' ? 'names of the note' : 'as the call has it';
    yield `followed to the end, ${calls} calls, seed ${seed}, ${whose}`;
    yield* ofFollowed(followCalls(chanceFrom(seed), calls, names), names);
  }
}

/** Where calls did not come to their end, the commonest first. */
function stuck(found: readonly DeskFollowed[]): string[] {
  const counts = new Map<string, number>();
  for (const { stuckAt } of found) {
    if (stuckAt === undefined) continue;
    const at = stuckAt.replace(/[0-9a-f-]{36}/g, '').slice(0, 60);
    counts.set(at, (counts.get(at) ?? 0) + 1);
  }
  return [...counts]
    .sort((a, b) => b[1] - a[1])
    .map(([at, count]) => `  asked again and again: ${count} × ${at}`);
}

/** Marked arms alone: where there is no mark the desk waits for what they are sold as. */
export function* desk(calls: number, seed: number): Generator<string> {
  const found = followDesks(chanceFrom(seed), calls);
  const all = scored(found);
  yield* [
    `what is next at the desk, ${calls} calls with a mark, seed ${seed}`,
    plain('things done after the first', meanOf(found.map(({ steps }) => steps))),
    told('name right', all.nameRight),
    told('ratio held', all.ratioHeld),
    told('within 1.5 %', all.near),
    ...words(all),
    told('no word', all.wordWithheld),
    ...stuck(found),
  ];
}
