import { ratioRead } from '../../server/mechanics/assessment/ratio/ratio.ts';
import { explainReadings } from '../../server/mechanics/explain-readings/explain.ts';
import type { ExplainInput } from '../../server/mechanics/explain-readings/types.ts';
import { chanceFrom } from '../mechanics/explain-readings/random.ts';
import { READING_SETS } from '../mechanics/explain-readings/score.ts';
import { NAMES } from '../mechanics/explain-readings/simulated-call.ts';
import { drawnCall } from './drawn.ts';
import { heardOf, type Judged, judgedAgainst } from './hear.ts';
import type { MemoryBuild } from './memory-build.ts';
import { RecordedCall } from './recorded-call.ts';
import { type Scored, scored } from './shares.ts';

export type ReadingSet = keyof typeof READING_SETS;

/** What the record of a call gives to the inference: for its valve, or the one that the arm was moved to. */
export function givenBy(build: MemoryBuild): { input: ExplainInput; entryIds: readonly string[] } {
  const { explained } = ratioRead(build.evidence());
  const found = explained.filter(({ given }) => given !== undefined);
  const given = (found.find(({ group }) => group.cylinder === 1) ?? found[0])?.given;
  if (given === undefined) throw new Error('nothing was read of the arm');
  return given;
}

/** What the inference alone says against the mark; the assessment has put its own word in that place. */
export function ruledOn(build: MemoryBuild, word: Judged['word']): Judged['word'] {
  return word === undefined ? undefined : explainReadings(givenBy(build).input).againstMark;
}

interface RowsScored {
  /** The names of the design note, so that its table can be set beside it. */
  readonly ofNote: Scored;
  /** As the call has it: the trade's list of nominals, which has two names more. */
  readonly ofCall: Scored;
}

/** Simulates calls with one set of readings, each entered as the desk enters it, and scores what is then said. */
export function scoreRows(set: ReadingSet, calls: number, seed: number): RowsScored {
  const chance = chanceFrom(seed);
  const rows = Array.from({ length: calls }, (): { ofNote: Judged; ofCall: Judged } => {
    const call = drawnCall(chance);
    const recorded = new RecordedCall(chance, call);
    for (const ask of READING_SETS[set](call)) recorded.take(ask);
    const { input } = givenBy(recorded.build);
    const { result, word } = heardOf(recorded.build.assess());
    return {
      ofNote: judgedAgainst(call, explainReadings({ ...input, nominals: NAMES })),
      ofCall: judgedAgainst(call, result, word, ruledOn(recorded.build, word)),
    };
  });
  return {
    ofNote: scored(rows.map(({ ofNote }) => ofNote)),
    ofCall: scored(rows.map(({ ofCall }) => ofCall)),
  };
}
