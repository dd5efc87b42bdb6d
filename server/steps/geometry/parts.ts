import type { CallContext } from '../../call/context.ts';
import { questionsNamed } from '../../call/question-form.ts';
import { computedPart } from '../../call/worked/computed-part.ts';
import type { WorkedData, WorkedPart, WorkedStep } from '../../call/worked/part.ts';
import { checkerAsked, standAsked } from '../../drawings/asked-lengths.ts';
import { linkageAsked } from '../../drawings/linkage-asked.ts';
import { partDrawing } from '../../drawings/part.ts';
import type { MarksDetail } from '../../mechanics/assessment/marks/detail.ts';
import { followerForm } from './forms/follower.ts';
import { pushrodForm } from './forms/pushrod.ts';
import { standForm } from './forms/stand.ts';
import { sweepForm } from './forms/sweep.ts';
import { marksPart } from './marks-part.ts';

/** What the step has loaded, with the valves that have marks. */
export interface GeometryData extends WorkedData {
  readonly valves: MarksDetail['valves'];
}

/** What the sums of lengths ask is answered at each of them. */
const ofSums = (context: CallContext) =>
  questionsNamed(context, context.assessment.details.workings.questionIds).filter(
    ({ step }) => step === 'geometry',
  );

const counted = (many: number, one: string, more: string): string => `${many} ${many === 1 ? one : more}`;

const marks: WorkedPart<GeometryData> = {
  name: 'marks',
  title: 'Mark on the stem’s end',
  words: {
    say: 'Is it sideways or in line? How wide is it? Then, where does its middle sit: centred, or toward which side? Fresh ink, or found after running?',
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
      name: 'follower-ratio',
      title: 'Ratio from the follower’s arms',
      words: {
        say: 'From the pivot’s middle: how far to the valve, and how far to where the cam touches, valve shut? And the same at full lift?',
        how: 'Measure from the pivot’s middle, square to the line in which valve and cam push. First with the valve shut.',
      },
      turns: true,
      computation: 'follower-ratio',
      form: followerForm,
      asked: () => [],
      headline: 'headline:working:follower',
      questions: ofSums,
    }),
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
      name: 'pushrod-length',
      title: 'Pushrod from a checker',
      words: {
        say: 'How long is the checker screwed together, how many turns out is it, and what does one turn add? Read over its ends, or to a gauge? How much preload or lash goes with it?',
        how: 'Solid or locked lifter, light spring, the tip’s mark where it should be. Count the turns as you screw the checker together; then caliper it as it came out, to prove the count.',
      },
      turns: true,
      computation: 'pushrod-length',
      form: pushrodForm,
      asked: () => [checkerAsked('asked-checker')],
      headline: 'headline:working:pushrod',
      questions: ofSums,
    }),
    computedPart({
      name: 'stand-height',
      title: 'Stand height and shims',
      words: {
        say: 'From one face of the head, along the valve: how high is the pivot’s middle, and how high the stem’s end with the valve shut? Which shims are there?',
        how: 'Valve shut. Measure along the valve from one face: to the middle of the pivot, and to the stem’s end. Then the roller, across.',
      },
      turns: true,
      computation: 'stand-height',
      form: standForm,
      asked: () => [standAsked('asked-stand')],
      headline: 'headline:working:stand',
      questions: ofSums,
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
      asked: () => [linkageAsked('asked-linkage')],
    }),
  ],
  opens: ({ assessment }) => (assessment.details.gear.parts.includes('marks') ? 'follower-ratio' : 'marks'),
};
