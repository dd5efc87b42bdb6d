import type { CallContext } from '../../call/context.ts';
import { questionsNamed } from '../../call/question-form.ts';
import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';
import { isStopped } from '../../call/under-stop.ts';
import type { WorkedData } from '../../call/worked/part.ts';
import { workingText } from '../../call/worked/text.ts';
import { outdatedSaid, workingTold } from '../../call/worked/told.ts';
import { partSaid } from '../../mechanics/lash/adjuster-words.ts';
import type { LoggedLash } from '../../records/lash-log/lash-log.ts';
import type { Working } from '../../records/workings/workings.ts';
import { pickedDayText } from '../../web/dates.ts';
import { lashText, standingLines } from './lash-text.ts';
import { shimSentences } from './shims-part.ts';
import { turnAsked } from './turn-asked.ts';

/** The computations of this step, each of which may have been kept. */
const COMPUTATIONS = ['adjuster', 'lifter-preload', 'lash-shim', 'lash-hot-cold'];

/** What its lock did: whoever takes the call over has to know it. */
const nutSaid = ({ assessment }: CallContext, { nut }: LoggedLash): string =>
  nut === 'not-looked' ? '' : `, the ${partSaid(assessment.details.lash.adjuster, nut)}`;

/** The answer as it is read out, with the turn itself; not while nobody turns it. */
function workedOut(context: CallContext, computations: WorkedData['computations'], working: Working): string {
  const told = workingTold(context, working);
  if (told !== undefined) return `${computations.get(working.computation)?.title ?? ''}: ${told}`;
  const turn = isStopped(context) ? undefined : turnAsked(working);
  return `${workingText(computations, working, outdatedSaid(context, working))}${turn === undefined ? '' : `; ${turn}`}`;
}

/** The newest of each computation of the step. */
const newestOf = (workings: readonly Working[]): Working[] =>
  COMPUTATIONS.flatMap((name) => workings.findLast(({ computation }) => computation === name) ?? []);

/** Lashes that were set or found on a day; the last setting, by whom; what the log asks. */
export function adjusterItems(context: CallContext, { workings, computations }: WorkedData): TakeoverItem[] {
  const lines = standingLines(context);
  const logged = lines.filter(({ moment, engine }) => moment === 'set' || engine !== 'not-said');
  const set = lines.findLast(({ moment }) => moment === 'set') ?? lines.at(-1);
  return [
    ...(logged.length === 0
      ? []
      : [
          {
            card: 'raw' as const,
            label: 'Lash log:',
            text: logged
              .map(
                (line) =>
                  `${pickedDayText(line.on, line.reading.at)} ${lashText(line)}${nutSaid(context, line)}`,
              )
              .join('; '),
          },
        ]),
    set === undefined
      ? { card: 'of-goal', label: 'Last setting:', text: NOT_YET }
      : {
          card: 'of-goal',
          label: 'Last setting:',
          text: `${lashText(set)}${nutSaid(context, set)}`,
          note: `${pickedDayText(set.on, set.reading.at)}, ${set.doneBy || set.reading.by}`,
        },
    ...shimSentences(context).map((text): TakeoverItem => ({ card: 'of-goal', label: 'Shim:', text })),
    ...newestOf(workings).map(
      (working): TakeoverItem => ({
        card: 'of-goal',
        label: 'Worked out:',
        text: workedOut(context, computations, working),
      }),
    ),
    ...questionsNamed(context, context.assessment.details.lash.questionIds)
      .filter(({ answered }) => answered === undefined)
      .map(({ ask }): TakeoverItem => ({ card: 'of-goal', label: 'Asked:', text: ask })),
  ];
}
