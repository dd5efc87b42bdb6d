import { defined } from '../../../shared/defined.ts';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { siIf } from '../../../shared/schemas/entered.ts';
import type {
  AnswerEvidence,
  ArmEvidence,
  HandPartEvidence,
  NoteEvidence,
  PartEvidence,
  WorkingEvidence,
} from '../../mechanics/assessment/evidence.ts';
import { computation as camTiming } from '../../mechanics/computations/cam-timing.ts';
import { computation as centreline } from '../../mechanics/computations/centreline.ts';
import { computation as lashShim } from '../../mechanics/computations/lash-shim.ts';
import { computation as linkage } from '../../mechanics/computations/linkage.ts';
import { computation as rollerSweep } from '../../mechanics/computations/roller-sweep.ts';
import { computation as topDeadCentre } from '../../mechanics/computations/top-dead-centre.ts';
import type { Answer } from '../../records/answers/answers.ts';
import type { Arm } from '../../records/arms/arms.ts';
import type { Note } from '../../records/notes/notes.ts';
import type { HandPart } from '../../records/part-readings/hand-parts.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import type { Working } from '../../records/workings/workings.ts';
import { entryEvidence } from './entry.ts';
import { setBy } from './set-by.ts';

export const armEvidence = ({ id, name, ratioStamp, otherNumber, boxLabel }: Arm): ArmEvidence => ({
  id,
  name,
  ratioStamp,
  otherNumber,
  boxLabel,
});

export function partEvidence(entry: PartReading): PartEvidence {
  const { kind, size, word, typed, readAs, partId, tool, within, count } = entry;
  return {
    ...entryEvidence(entry),
    kind,
    typed,
    readAs,
    ...defined({ partId, size: siIf(size), unit: size?.unit, word, typedWithin: siIf(within), count }),
    ...(size === undefined ? {} : { tool }),
  };
}

export const handPartEvidence = ({ id, name, armId }: HandPart): HandPartEvidence => ({
  name,
  ...defined({ id, armId }),
});

/** An angle is how far the plunger leaned; a length is how much lash was in it. */
const amountOf = ({ value }: Answer): Pick<AnswerEvidence, 'value' | 'lean'> =>
  defined(value?.unit === 'deg' ? { lean: siIf(value) } : { value: siIf(value) });

export const answerEvidence = (entry: Answer): AnswerEvidence => ({
  id: entry.id,
  line: entry.seq,
  code: entry.code,
  question: entry.question,
  answer: entry.answer,
  ...defined({
    questionId: entry.questionId,
    found: entry.found,
    ...amountOf(entry),
    setUpId: entry.setUpId,
    place: entry.place,
  }),
});

/** Lengths of a sweep, a linkage or a shim, which the build may have as well. */
function lengthsOf({ computation, inputs }: Working) {
  switch (computation) {
    case rollerSweep.name: {
      const { data } = rollerSweep.input.safeParse(inputs);
      return defined({ pivotToTip: data?.pivotToTip, netLift: data?.netLift });
    }
    case linkage.name: {
      const { data } = linkage.input.safeParse(inputs);
      return defined({ pivotToTip: data?.pivotToTip, netLift: data?.netLift });
    }
    case lashShim.name:
      return defined({ lashWanted: lashShim.input.safeParse(inputs).data?.lashWanted });
    default:
      return {};
  }
}

/** Kept before such readings were refused: nothing can be told of them. */
function possible<Result>(compute: () => Result): Result | undefined {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return undefined;
  }
}

/** What was read of the timing, computed again in SI. */
function timingOf({ computation, inputs }: Working): WorkingEvidence['timing'] {
  if (computation === topDeadCentre.name) {
    const read = topDeadCentre.input.safeParse(inputs);
    return read.success ? { of: 'stop', ...topDeadCentre.compute(read.data) } : undefined;
  }
  const read = computation === centreline.name ? centreline.input.safeParse(inputs) : undefined;
  if (read?.success !== true) return undefined;
  const found = possible(() => centreline.compute(read.data));
  if (found === undefined) return undefined;
  return {
    of: 'peak',
    side: read.data.side ?? 'intake',
    fromEvents: read.data.opens !== undefined,
    centreline: found.centreline,
    ...defined({ duration: found.duration, card: read.data.card, cardDuration: read.data.cardDuration }),
    righted: read.data.pointerOff !== undefined,
    ...(read.data.pointerOff === 0
      ? { shifted: true as const }
      : defined({ pointerOff: read.data.pointerOff })),
  };
}

/** Both lobes by figures of a whole cam, computed again in SI. */
function wholeCamOf({ computation, inputs }: Working): WorkingEvidence['wholeCam'] {
  const read = computation === camTiming.name ? camTiming.input.safeParse(inputs) : undefined;
  if (read?.success !== true) return undefined;
  const found = possible(() => camTiming.compute(read.data));
  return found === undefined
    ? undefined
    : { intake: found.intakeCentreline, exhaust: found.exhaustCentreline };
}

/** A computation that was kept, with what others go by. */
export const workingEvidence = (working: Working): WorkingEvidence => ({
  id: working.id,
  line: working.seq,
  computation: working.computation,
  ...lengthsOf(working),
  ...defined({ timing: timingOf(working), wholeCam: wholeCamOf(working), set: setBy(working) }),
});

export const noteEvidence = ({ id, seq, kind, body, doneAt }: Note): NoteEvidence => ({
  line: seq,
  id,
  kind: kind === 'promise' || kind === 'advice' ? kind : 'note',
  body,
  done: doneAt !== undefined,
});
