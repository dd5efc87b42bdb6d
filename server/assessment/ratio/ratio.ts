import { InputFaults } from '../../../shared/problems/faults.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { computation as ratioAtFullLift } from '../../mechanics/computations/ratio-at-full-lift.ts';
import { questionsFor } from '../../mechanics/questions/questions.ts';
import type { Question } from '../../mechanics/questions/types.ts';
import { specAt } from '../../records/builds/revisions.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import { type BuildRecord, setUpOf } from '../../records/whole-build/build-record.ts';
import { type LobeReadings, lobeReadings } from './lobe-readings.ts';
import { questionInput } from './question-input.ts';
import { kindOf, type RatioInput, ratioInput } from './ratio-input.ts';

type RatioResult = ReturnType<typeof ratioAtFullLift.compute>;

/** The ratio of one set-up, or what it still lacks; and what must be asked before it is believed. */
export interface SetUpRatio {
  readonly setUp: SetUp;
  readonly spec: BuildSpec;
  readonly readings: readonly Reading[];
  /** The passes of the lobe, its own or an earlier set-up's. */
  readonly lobe: LobeReadings;
  /** The readings that the result is calculated from, in the order of entry. */
  readonly rests: readonly Reading[];
  readonly input: RatioInput | undefined;
  readonly result: RatioResult | undefined;
  readonly missing: readonly string[];
  readonly questions: readonly Question[];
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
}

/** The ratio, or why these readings give none: the record of a call is shown whatever was entered. */
function computed(input: RatioInput | undefined): { result: RatioResult | undefined; refused: string[] } {
  if (input === undefined) return { result: undefined, refused: [] };
  try {
    return { result: ratioAtFullLift.compute(input), refused: [] };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    const refused = error.faults.map(
      (fault) => `${fault.pointer.slice(1).replaceAll('/', ' ')} ${fault.detail}`,
    );
    return { result: undefined, refused };
  }
}

/** A mean of falling passes is no ratio, whatever its interval (common practice, no published source). */
const SINKING = 'passes that don’t sink: a solid lifter, or one locked solid at the same seat height';

const borrowedText = ({ from }: LobeReadings): string[] =>
  from === undefined
    ? []
    : [
        `the lobe was read in set-up ${from.number}; at the lifter’s body it serves both springs and any lash`,
      ];

/** Several parts of a page rest on the same ratio; a record never changes, and nor does what follows from it. */
const known = new WeakMap<BuildRecord, Map<string, SetUpRatio>>();

/** The ratio of a set-up with everything it rests on, from the readings that stand. */
export function setUpRatio(record: BuildRecord, setUpId: string): SetUpRatio {
  const setUp = setUpOf(record, setUpId);
  const ofRecord = known.get(record) ?? new Map<string, SetUpRatio>();
  known.set(record, ofRecord);
  const found = ofRecord.get(setUp.id) ?? ratioFrom(record, setUp);
  ofRecord.set(setUp.id, found);
  return found;
}

function ratioFrom({ revisions, readings: all, setUps }: BuildRecord, setUp: SetUp): SetUpRatio {
  const spec = specAt(revisions, setUp.revision);
  const readings = all.filter((reading) => reading.setUpId === setUp.id);
  const standing = stillStanding(all);
  const lobe = lobeReadings(setUp, setUps, standing);
  const valve = kindOf(stillStanding(readings), 'valve-lift');
  const { input, missing } = ratioInput(spec, setUp, [...lobe.readings, ...valve]);
  const questions = questionsFor(questionInput(spec, setUp, setUps, standing));
  const sinks = questions.some(({ code, weight }) => code === 'falling-passes' && weight === 'strong');
  const { result, refused } = sinks ? { result: undefined, refused: [SINKING] } : computed(input);
  return {
    setUp,
    spec,
    readings,
    lobe,
    rests: [...lobe.readings, ...valve].sort((a, b) => a.seq - b.seq),
    input,
    result,
    missing: [...missing, ...refused],
    questions,
    assumptions:
      input === undefined || result === undefined
        ? []
        : [...ratioAtFullLift.assumptions(input, result), ...borrowedText(lobe)],
    cautions: input === undefined || result === undefined ? [] : ratioAtFullLift.cautions(input, result),
  };
}
