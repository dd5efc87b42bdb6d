import { computedPart } from '../../call/worked/computed-part.ts';
import type { WorkedData, WorkedPart, WorkedStep } from '../../call/worked/part.ts';
import { partDrawing } from '../../drawings/part.ts';
import type { MarksDetail } from '../../mechanics/assessment/marks/detail.ts';
import { marksPart } from './marks-part.ts';
import { sweepForm } from './sweep-form.ts';

/** What the step has loaded, with the valves that have marks. */
export interface GeometryData extends WorkedData {
  readonly valves: MarksDetail['valves'];
}

const counted = (many: number, one: string, more: string): string => `${many} ${many === 1 ? one : more}`;

const marks: WorkedPart<GeometryData> = {
  name: 'marks',
  title: 'Mark on the stem’s end',
  words: {
    say: 'Is it sideways or along the rocker? How wide is it? Then, where does its middle sit: toward the valley or the exhaust side? Fresh ink, or found after running?',
    how: 'Ink the tip, light spring, two turns by hand. Measure the width of the mark first, then where its middle sits.',
  },
  turns: true,
  form: 'mark',
  kept: ({ valves }) => {
    const all = valves.reduce((sum, valve) => sum + valve.marks.length, 0);
    return all === 0
      ? ''
      : `${counted(all, 'mark', 'marks')} on ${counted(valves.length, 'valve', 'valves')}`;
  },
  body: (_, { context, rejected }) => marksPart(context, rejected),
};

export const geometry: WorkedStep<GeometryData> = {
  name: 'geometry',
  parts: [
    marks,
    computedPart({
      name: 'roller-sweep',
      title: 'Least sweep of this lift',
      words: {
        say: 'How long is the arm, from the middle of the trunnion to the middle of the roller? And what is the net lift?',
        how: 'Measure the arm from the middle of the trunnion to the middle of the roller.',
      },
      turns: false,
      computation: 'roller-sweep',
      form: sweepForm,
      asked: () => [partDrawing('asked-arm', 'pivot-to-tip')],
    }),
    computedPart({
      name: 'linkage',
      title: 'Whole linkage',
      words: {
        say: 'Are there lengths and angles of the whole train, from a drawing?',
        how: 'This needs a drawing of the engine. Without one, leave it.',
      },
      turns: false,
      computation: 'linkage',
      asked: () => [partDrawing('asked-linkage', undefined)],
    }),
  ],
  opens: () => 'marks',
};
