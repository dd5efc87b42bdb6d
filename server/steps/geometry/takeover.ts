import { markSaidOf } from '../../../shared/schemas/tip-mark.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';
import type { WorkedData } from '../../call/worked/part.ts';
import { workingText } from '../../call/worked/text.ts';
import { outdatedSaid, workingTold } from '../../call/worked/told.ts';
import type { Working } from '../../records/workings/workings.ts';
import { questionsOf } from './marks-part.ts';

/** Sums of this step that somebody takes over with. */
const COMPUTATIONS = ['pushrod-length', 'stand-height', 'roller-sweep'];

/** What it comes to in the words of the assessment, else by its figure. */
function toldText(context: CallContext, computations: WorkedData['computations'], working: Working): string {
  const told = workingTold(context, working);
  if (told === undefined) return workingText(computations, working, outdatedSaid(context, working));
  return `${computations.get(working.computation)?.title ?? ''}: ${told}`;
}

/** Each mark as it was read, what it raises, the lengths that were worked out, and the photographs of marks. */
export function markItems(context: CallContext, { workings, computations }: WorkedData): TakeoverItem[] {
  const { valves } = context.assessment.details.marks;
  const pictures = context.photographs.filter(({ shows }) => shows === 'tip-mark');
  return [
    ...valves.map(
      (valve): TakeoverItem => ({
        card: 'raw',
        label: `Tip mark ${valveName(valve)}:`,
        text: valve.marks
          .toSorted((a, b) => a.line - b.line)
          .map(({ readAs }) => markSaidOf(readAs, context.assessment.details.gear.gear))
          .join('; '),
      }),
    ),
    ...valves.flatMap((valve) =>
      questionsOf(context, valve).map(
        ({ ask }): TakeoverItem => ({ card: 'of-goal', label: `Mark ${valveName(valve)}:`, text: ask }),
      ),
    ),
    ...valves.flatMap((valve): TakeoverItem[] =>
      valve.advice === undefined
        ? []
        : [{ card: 'of-goal', label: `To change, ${valveName(valve)}:`, text: valve.advice }],
    ),
    ...COMPUTATIONS.flatMap((name): TakeoverItem[] => {
      const last = workings.findLast(({ computation }) => computation === name);
      if (last === undefined) return [];
      return [
        {
          card: 'of-goal',
          label: 'Worked out:',
          text: toldText(context, computations, last),
        },
      ];
    }),
    {
      card: 'of-goal',
      label: 'Photographs of tip marks:',
      text: pictures.map(({ caption, seq }) => caption || `line ${seq}`).join('; ') || NOT_YET,
    },
  ];
}
