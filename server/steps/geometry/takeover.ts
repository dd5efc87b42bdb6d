import { type CallContext, valveName } from '../../call/context.ts';
import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';
import { questionsOf } from './marks-part.ts';

/** Each mark as it was read, what it raises, and the photographs of marks. */
export function markItems(context: CallContext): TakeoverItem[] {
  const { valves } = context.assessment.details.marks;
  const pictures = context.photographs.filter(({ shows }) => shows === 'tip-mark');
  return [
    ...valves.map(
      (valve): TakeoverItem => ({
        card: 'raw',
        label: `Tip mark ${valveName(valve)}:`,
        text: valve.marks
          .toSorted((a, b) => a.line - b.line)
          .map(({ readAs }) => readAs)
          .join('; '),
      }),
    ),
    ...valves.flatMap((valve) =>
      questionsOf(context, valve).map(
        ({ ask }): TakeoverItem => ({ card: 'of-goal', label: `Mark ${valveName(valve)}:`, text: ask }),
      ),
    ),
    {
      card: 'of-goal',
      label: 'Photographs of tip marks:',
      text: pictures.map(({ caption, seq }) => caption || `line ${seq}`).join('; ') || NOT_YET,
    },
  ];
}
