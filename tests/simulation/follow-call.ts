import { explainReadings } from '../../server/mechanics/explain-readings/explain.ts';
import { MOST_STEPS, strike } from '../mechanics/explain-readings/follow.ts';
import type { Chance } from '../mechanics/explain-readings/random.ts';
import { NAMES, type TrueCall } from '../mechanics/explain-readings/simulated-call.ts';
import { drawnCall } from './drawn.ts';
import { heardOf, type Judged, judgedAgainst } from './hear.ts';
import { RecordedCall } from './recorded-call.ts';
import { givenBy, ruledOn } from './score-rows.ts';

/** Which names are weighed: those of the design note, or those that the call has. */
export type Names = 'of-note' | 'of-call';

export interface Followed extends Judged {
  readonly steps: number;
  readonly minutes: number;
  readonly recorded: RecordedCall;
}

/** What is weighed of the record as it stands. */
function weighed({ build }: RecordedCall, names: Names) {
  if (names === 'of-call') return heardOf(build.assess());
  const result = explainReadings({ ...givenBy(build).input, nominals: NAMES });
  return { result, word: undefined };
}

/** Strikes out what a mistake that is held for certain spoils, once something free of it stands. */
function strikeOut(recorded: RecordedCall, result: ReturnType<typeof weighed>['result']): boolean {
  if (!result.explanations.some(({ causes }) => causes.length > 0)) return false;
  const { input, entryIds } = givenBy(recorded.build);
  const struck = strike(input, result);
  if (struck === input) return false;
  if (struck.cardLobeLift !== input.cardLobeLift) recorded.withoutCard();
  const gone = input.readings.flatMap((reading, index) =>
    struck.readings.includes(reading) ? [] : (entryIds[index] ?? []),
  );
  for (const id of gone)
    recorded.build.strike(id, 'a mistake held for certain, and a reading free of it stands');
  return true;
}

/** Follows one call to the end: the reading that is worth most is taken and entered, till there is none. */
export function followCall(chance: Chance, call: TrueCall, names: Names): Followed {
  const recorded = new RecordedCall(chance, call);
  recorded.take({ of: 'valve-lift', spring: call.spring, lifter: call.lifter });
  let heard = weighed(recorded, names);
  let steps = 0;
  let minutes = 0;
  while (heard.result.nextReading !== undefined && steps < MOST_STEPS) {
    steps += 1;
    minutes += heard.result.nextReading.minutes;
    recorded.act(heard.result.nextReading.action);
    heard = weighed(recorded, names);
    if (strikeOut(recorded, heard.result)) heard = weighed(recorded, names);
  }
  const ruled = ruledOn(recorded.build, heard.word);
  return { ...judgedAgainst(call, heard.result, heard.word, ruled), steps, minutes, recorded };
}

export const followCalls = (chance: Chance, calls: number, names: Names): Followed[] =>
  Array.from({ length: calls }, () => followCall(chance, drawnCall(chance), names));
