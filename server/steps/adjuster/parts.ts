import { computedPart } from '../../call/worked/computed-part.ts';
import type { WorkedData, WorkedPart, WorkedStep } from '../../call/worked/part.ts';
import { type AdjusterPlace, adjusterTurned } from '../../drawings/adjuster-turned.ts';
import { type Drawing, rulerOf } from '../../drawings/drawing.ts';
import { lashGap } from '../../drawings/lash-gap.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import { adjusterForm } from './adjuster-form.ts';
import { lashPart } from './lash-part.ts';
import { turnComponents } from './turn-asked.ts';

export interface AdjusterData extends WorkedData {
  /** Lines of the lash log that stand. */
  readonly lines: number;
}

const PLACES: readonly AdjusterPlace[] = ['stud-nut', 'cup-screw', 'valve-end-screw'];

function adjusterDrawing(typed: Fields): Drawing {
  const mount = PLACES.find((place) => place === typed.mount) ?? 'stud-nut';
  const lifter = typed.lifter === 'solid' ? 'solid' : 'hydraulic';
  return adjusterTurned({ mount, lifter }, { id: 'asked-adjuster', ruler: rulerOf('inch') });
}

const lash: WorkedPart<AdjusterData> = {
  name: 'lash',
  title: 'Lash log',
  words: {
    say: 'Did the nut move? What is the gap, hot or cold, and what was it last set to, when and by whom?',
    how: 'Look at the nut before you touch it. On the base circle, feeler between roller and stem. Say hot or cold.',
  },
  turns: true,
  form: 'lash',
  kept: ({ lines }) => (lines === 0 ? '' : `${lines} ${lines === 1 ? 'line' : 'lines'}`),
  body: (_, { context, rejected }) => lashPart(context, rejected),
};

export const adjuster: WorkedStep<AdjusterData> = {
  name: 'adjuster',
  parts: [
    computedPart({
      name: 'adjuster',
      title: 'What the turns do',
      words: {
        say: 'Which thread is on the adjuster? How far was it turned from zero lash; or which lash was found, and which is wanted?',
        how: 'On the base circle. Find zero lash by up-and-down play, not by spinning the pushrod; then count the turns.',
      },
      turns: true,
      computation: 'adjuster',
      form: adjusterForm,
      asked: (typed) => [adjusterDrawing(typed)],
      followUp: (context, _workings, last) => turnComponents(context, last),
    }),
    lash,
    computedPart({
      name: 'lash-hot-cold',
      title: 'Lash hot and cold',
      words: {
        say: 'Which lash is wanted hot, and what are block, head, pushrod and valve made of?',
        how: 'A first figure only: the best way is to read one pair cold and hot.',
      },
      turns: true,
      computation: 'lash-hot-cold',
      asked: () => [lashGap({}, { id: 'asked-lash', ruler: rulerOf('inch') })],
    }),
  ],
  // What a stop of the lash asks is answered beside its log.
  opens: ({ plan, assessment }) =>
    plan.logFirst || assessment.stop.some(({ code }) => code === 'lash-grew-again') ? 'lash' : 'adjuster',
};
