import type { CallContext } from '../../call/context.ts';
import { questionsNamed } from '../../call/question-form.ts';
import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';
import type { WorkedData } from '../../call/worked/part.ts';
import { workingText } from '../../call/worked/report.ts';
import type { Working } from '../../records/workings/workings.ts';
import { lashText, standingLines } from './lash-text.ts';
import { turnAsked } from './turn-asked.ts';

/** The answer as it is read out, with the turn itself. */
function workedOut(computations: WorkedData['computations'], working: Working): string {
  const turn = turnAsked(working);
  return `${workingText(computations, working)}${turn === undefined ? '' : `; ${turn}`}`;
}

/** Lashes that were set or found on a day; the last setting, by whom; what the log asks. */
export function adjusterItems(context: CallContext, { workings, computations }: WorkedData): TakeoverItem[] {
  const lines = standingLines(context);
  const logged = lines.filter(({ moment, engine }) => moment === 'set' || engine !== 'not-said');
  const set = lines.findLast(({ moment }) => moment === 'set') ?? lines.at(-1);
  const worked = workings.findLast(({ computation }) => computation === 'adjuster');
  return [
    ...(logged.length === 0
      ? []
      : [
          {
            card: 'raw' as const,
            label: 'Lash log:',
            text: logged.map((line) => `${line.on} ${lashText(line)}`).join('; '),
          },
        ]),
    set === undefined
      ? { card: 'of-goal', label: 'Last setting:', text: NOT_YET }
      : {
          card: 'of-goal',
          label: 'Last setting:',
          text: lashText(set),
          note: `${set.on}, ${set.doneBy || set.reading.by}`,
        },
    ...(worked === undefined
      ? []
      : [{ card: 'of-goal' as const, label: 'Worked out:', text: workedOut(computations, worked) }]),
    ...questionsNamed(context, context.assessment.details.lash.questionIds).map(
      ({ ask }): TakeoverItem => ({ card: 'of-goal', label: 'Asked:', text: ask }),
    ),
  ];
}
