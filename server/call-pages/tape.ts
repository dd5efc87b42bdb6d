import { defined } from '../../shared/defined.ts';
import type { TapeData } from '../../views/parts/tape.examples.ts';
import type { TapeLineData } from '../../views/parts/tape-line.examples.ts';
import { answeredText } from '../call/answered-text.ts';
import { type CallContext, valveName } from '../call/context.ts';
import { ratioFigure, ratioName } from '../call/ratio-text.ts';
import { ratioRestsOn, type ShownSetUp, shownSetUps } from '../call/shown-set-up.ts';
import { changesSaid } from '../call/spec/spec-changes.ts';
import type { TapeNames } from '../call/tell-events.ts';
import { inputsSaid } from '../call/worked/inputs-said.ts';
import type { RecordedEvent } from '../events/build-events.ts';
import { typedApart } from '../events/typed-apart.ts';
import { choiceOf } from '../mechanics/assessment/common/chosen.ts';
import type { Reading } from '../records/readings/readings.ts';
import { momentText } from '../web/dates.ts';
import type { CallFrame } from './frame.ts';
import { tapeText } from './tape-text.ts';

/** A reading on the engine or of a part in the hand. */
type Kept = Pick<Reading, 'id' | 'seq' | 'replacedBy' | 'reason'>;

/** Why a line of the tape no longer stands, and which line came in its place. */
function replacedOf(reading: Kept | undefined, byId: ReadonlyMap<string, Kept>) {
  const later = reading?.replacedBy === undefined ? undefined : byId.get(reading.replacedBy);
  return later === undefined ? {} : { replaced: { reason: `${later.reason}.`, by: later.seq } };
}

/** A result stands after the newest line it rests on, and has that line's number with a letter. */
function resultLine(context: CallContext, found: ShownSetUp): { after: number; line: TapeLineData }[] {
  const { result, setUp } = found.detail;
  const rests = ratioRestsOn(context, found);
  const newest = rests.at(-1);
  if (result === undefined || newest === undefined) return [];
  return [
    {
      after: newest.seq,
      line: {
        line: `${newest.seq}a`,
        kind: 'result',
        text: `${ratioName(setUp.spring)}, ${valveName(setUp)}`,
        value: ratioFigure(result).text,
        who: 'Benchcall',
        at: newest.at.toISOString(),
        when: momentText(newest.at),
        restsOn: rests.map((reading) => reading.seq),
      },
    },
  ];
}

/** When it was typed, by the phone’s clock, where it arrived much later. */
function typedOf(event: RecordedEvent): Pick<TapeLineData, 'typed'> {
  const at = typedApart(event);
  return at === undefined ? {} : { typed: { at: at.toISOString(), when: momentText(at) } };
}

/** The names that lines are told with. */
export function namesOf(context: CallContext): TapeNames {
  const valves = new Map(context.setUps.map((setUp) => [setUp.id, valveName(setUp)]));
  const { gear, lash } = context.assessment.details;
  const specs = new Map(context.revisions.map(({ revision, spec }) => [revision, spec]));
  return {
    revisionSaid: (revision) => changesSaid(specs.get(revision - 1) ?? {}, specs.get(revision) ?? {}),
    valveOf: (setUpId: string) => valves.get(setUpId) ?? 'a valve',
    gear: gear.gear,
    adjuster: lash.adjuster,
    answerSaid: (questionId, answer, found, amount) => {
      const asked = context.assessment.questions.find(({ id }) => id === questionId);
      if (asked === undefined) return undefined;
      const given = { answers: asked.answers, answered: { entryId: '', answer, ...defined({ found }) } };
      const value = amount === undefined ? undefined : { readAs: amount };
      return choiceOf(given) === undefined ? undefined : answeredText(given, { value });
    },
  };
}

/** A line of a computation reads back what went into it. */
export function withInputs(names: TapeNames, { record }: CallContext, { seq }: RecordedEvent): TapeNames {
  const working = record.workings.find((each) => each.seq === seq);
  return working === undefined ? names : { ...names, inputsSaid: inputsSaid(working) };
}

/** The record of the call, line for line, with each set-up's result below what it rests on. */
export function tapeOf({ told }: CallFrame, context: CallContext): TapeData {
  const kept: readonly Kept[] = [...context.readings, ...context.partReadings];
  const byId = new Map(kept.map((each) => [each.id, each]));
  const keptAt = new Map(kept.map((each) => [each.seq, each]));
  const results = shownSetUps(context).flatMap((found) => resultLine(context, found));
  const names = namesOf(context);
  const done = new Set(context.notes.filter((note) => note.doneAt !== undefined).map((note) => note.seq));
  const lines = context.events.flatMap((event): TapeLineData[] => {
    const words = tapeText(told, event, withInputs(names, context, event));
    return [
      {
        ...words,
        ...(done.has(event.seq) ? { due: `${words.due ?? ''}; kept` } : {}),
        line: event.seq,
        who: event.by,
        at: event.at.toISOString(),
        when: momentText(event.at),
        ...typedOf(event),
        ...(event.beforeStop === undefined ? {} : { beforeStop: event.beforeStop }),
        ...replacedOf(keptAt.get(event.seq), byId),
      },
      ...results.filter((each) => each.after === event.seq).map((each) => each.line),
    ];
  });
  return { id: 'tape', title: 'Tape', lines };
}
