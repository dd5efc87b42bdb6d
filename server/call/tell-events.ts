import type { ValveGear } from '../../shared/schemas/words.ts';
import type { TapeLineData } from '../../views/parts/tape-line.examples.ts';
import type { RecordedEvent } from '../events/build-events.ts';
import type { AnyEventSet, DataOf } from '../events/define-events.ts';
import { dataOf } from '../events/read-events.ts';
import type { AdjusterKind } from '../mechanics/lash/adjuster-words.ts';

/** What an event says on the tape; who, when and its number are the same for all. */
export type TapeText = Pick<TapeLineData, 'kind' | 'text' | 'value' | 'due'>;

/** What a line is told with beside its event. */
export interface TapeNames {
  /** The valve of a set-up, which events name by id: `5 intake`. */
  valveOf(setUpId: string): string;
  /** An answer with its amount, in the words that its question offers; nothing where the question is gone. */
  readonly answerSaid?: (
    questionId: string,
    answer: string,
    found: boolean | undefined,
    amount: string | undefined,
  ) => string | undefined;
  /** What a revision of the build has otherwise than the one before. */
  readonly revisionSaid?: (revision: number) => string;
  /** What went into the computation of the line. */
  readonly inputsSaid?: string;
  /** Marks and lashes are told in the words of the engine as it is described now. */
  readonly gear: ValveGear;
  readonly adjuster: AdjusterKind;
}

/** The line of an event; undefined where its data can't be read. */
export type Tell = (event: Pick<RecordedEvent, 'kind' | 'data'>, names: TapeNames) => TapeText | undefined;

/** The lines of events by their names. */
export type Tells = Readonly<Record<string, Tell>>;

type Lines<Events extends AnyEventSet> = {
  readonly [Name in keyof Events]: (data: DataOf<Events[Name]>, names: TapeNames) => TapeText;
};

/** Says every event of a set in words; an event without its line does not compile. */
export function tellEvents<Events extends AnyEventSet>(
  events: Events,
  lines: Lines<Events>,
): { readonly [Name in keyof Events]: Tell };
export function tellEvents(
  events: AnyEventSet,
  lines: Readonly<Record<string, (data: object, names: TapeNames) => TapeText>>,
): Tells {
  return Object.fromEntries(
    Object.entries(events).map(([name, definition]): [string, Tell] => [
      name,
      (event, names) => {
        const data = dataOf(event, definition);
        return data === undefined ? undefined : lines[name]?.(data, names);
      },
    ]),
  );
}

/** `label` and what follows it, where there is something to say. */
export const ifSaid = (label: string, value: string | undefined, after = ''): string =>
  value === undefined || value === '' ? '' : `${label}${value}${after}`;
