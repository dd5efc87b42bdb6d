import type { JudgedMarks } from '../../assessment/tip-marks/judged.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';

/** Each mark as it was read, what it raises, and the photographs of marks. */
export function markItems({ photographs }: CallContext, { valves }: JudgedMarks): TakeoverItem[] {
  const pictures = photographs.filter(({ shows }) => shows === 'tip-mark');
  return [
    ...valves.map(
      (valve): TakeoverItem => ({
        card: 'raw',
        label: `Tip mark ${valveName(valve)}:`,
        text: valve.marks.map(({ readAs }) => readAs).join('; '),
      }),
    ),
    ...valves.flatMap((valve) =>
      valve.questions.map(
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
