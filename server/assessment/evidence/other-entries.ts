import { defined } from '../../../shared/defined.ts';
import { siIf } from '../../../shared/schemas/entered.ts';
import type {
  AnswerEvidence,
  ArmEvidence,
  HandPartEvidence,
  NoteEvidence,
  PartEvidence,
  WorkingEvidence,
} from '../../mechanics/assessment/evidence.ts';
import { computation as rollerSweep } from '../../mechanics/computations/roller-sweep.ts';
import type { Answer } from '../../records/answers/answers.ts';
import type { Arm } from '../../records/arms/arms.ts';
import type { Note } from '../../records/notes/notes.ts';
import type { HandPart } from '../../records/part-readings/hand-parts.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import type { Working } from '../../records/workings/workings.ts';
import { entryEvidence } from './entry.ts';

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

export const answerEvidence = (entry: Answer): AnswerEvidence => ({
  id: entry.id,
  line: entry.seq,
  code: entry.code,
  question: entry.question,
  answer: entry.answer,
  ...defined({
    questionId: entry.questionId,
    found: entry.found,
    value: siIf(entry.value),
    setUpId: entry.setUpId,
  }),
});

/** A computation that was kept; of a roller sweep also the lengths that others go by. */
export function workingEvidence({ seq, computation, inputs }: Working): WorkingEvidence {
  const read = computation === rollerSweep.name ? rollerSweep.input.safeParse(inputs) : undefined;
  return {
    line: seq,
    computation,
    ...(read?.success === true ? { pivotToTip: read.data.pivotToTip, netLift: read.data.netLift } : {}),
  };
}

export const noteEvidence = ({ id, kind, body, doneAt }: Note): NoteEvidence => ({
  id,
  kind: kind === 'promise' || kind === 'advice' ? kind : 'note',
  body,
  done: doneAt !== undefined,
});
