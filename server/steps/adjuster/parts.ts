import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import type { CallContext } from '../../call/context.ts';
import { questionsNamed } from '../../call/question-form.ts';
import { computedPart } from '../../call/worked/computed-part.ts';
import type { WorkedData, WorkedPart, WorkedStep } from '../../call/worked/part.ts';
import { type AdjusterPlace, adjusterTurned } from '../../drawings/adjuster-turned.ts';
import { type Drawing, rulerOf } from '../../drawings/drawing.ts';
import { lashGap } from '../../drawings/lash-gap.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import { hotColdForm } from './forms/hot-cold.ts';
import { preloadForm } from './forms/preload.ts';
import { shimForm } from './forms/shim.ts';
import { adjusterForm } from './forms/turns.ts';
import { lashPart } from './lash-part.ts';
import { settingComponents } from './setting-tables.ts';
import { shimsPart } from './shims-part.ts';
import { turnComponents } from './turn-asked.ts';

export interface AdjusterData extends WorkedData {
  /** Lines of the lash log that stand. */
  readonly lines: number;
  /** The firing order, as it was told. */
  readonly order: string;
}

const PLACES: readonly AdjusterPlace[] = ['stud-nut', 'cup-screw', 'valve-end-screw'];

/** The adjuster where it is; no nut on a stud is drawn for an engine that may have none. */
function adjusterDrawing(typed: Fields): Drawing[] {
  const mount = PLACES.find((place) => place === typed.mount);
  if (mount === undefined) return [];
  const lifter = typed.lifter === 'solid' ? 'solid' : 'hydraulic';
  return [adjusterTurned({ mount, lifter }, { id: 'asked-adjuster', ruler: rulerOf(spokenUnits()) })];
}

/** What threads and plungers ask is answered at either sum. */
const ofAdjusters = (context: CallContext) =>
  questionsNamed(context, context.assessment.details.workings.questionIds).filter(
    ({ step }) => step === 'adjuster',
  );

const lash: WorkedPart<AdjusterData> = {
  name: 'lash',
  title: 'Lash log',
  words: {
    say: 'Did the adjuster or its lock move? What is the gap, hot or cold, and what was it last set to, when and by whom?',
    how: 'Look at the adjuster before you touch it. On the base circle, feeler between roller and stem. Say hot or cold.',
  },
  turns: true,
  form: 'lash',
  kept: ({ lines }) => (lines === 0 ? '' : `${lines} ${lines === 1 ? 'line' : 'lines'}`),
  body: (_, { context, rejected }) => lashPart(context, rejected),
};

const order: WorkedPart<AdjusterData> = {
  name: 'order',
  title: 'Which valve when',
  words: {
    say: 'What is the firing order, and how are the cylinders numbered along the banks?',
    how: 'Turn by hand at the crank bolt only. Watch one valve of the cylinder and set the other, in firing order.',
  },
  turns: true,
  kept: ({ order: told }) => told,
  body: (_, { context }) => ({ forms: [], slots: settingComponents(context) }),
};

const shims: WorkedPart<AdjusterData> = {
  name: 'shims',
  title: 'Shims, every valve',
  words: {
    say: 'Valve by valve: which lash, cold or hot, and how thick is the shim that is in, measured?',
    how: 'Lobe away from the bucket, feeler in the gap. Then the shim itself under a micrometer.',
  },
  turns: true,
  form: 'lash',
  kept: ({ lines }) => (lines === 0 ? '' : `${lines} ${lines === 1 ? 'line' : 'lines'}`),
  body: (_, { context, rejected }) => shimsPart(context, rejected),
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
      asked: adjusterDrawing,
      headline: 'headline:working:turns',
      questions: ofAdjusters,
      followUp: (context, _workings, last) => turnComponents(context, last),
    }),
    shims,
    lash,
    order,
    computedPart({
      name: 'lifter-preload',
      title: 'Preload of a hydraulic lifter',
      words: {
        say: 'How many turns past zero lash, on which thread? Does the lifter’s maker give a band, and how far can the plunger go?',
        how: 'Base circle, lifter bled down or held solid. Zero lash by up-and-down play, then count the turns.',
      },
      turns: true,
      computation: 'lifter-preload',
      form: preloadForm,
      asked: ({ mount = '' }) => adjusterDrawing({ mount, lifter: 'hydraulic' }),
      headline: 'headline:working:preload',
      questions: ofAdjusters,
    }),
    computedPart({
      name: 'lash-shim',
      title: 'Lash by shim',
      words: {
        say: 'How thick is the shim that is in, measured? Which lash did it give, which is wanted, hot or cold, and which shims are there?',
        how: 'On the base circle, feeler in the gap. Then take the shim out and measure it itself.',
      },
      turns: true,
      computation: 'lash-shim',
      form: shimForm,
      asked: () => [lashGap({}, { id: 'asked-lash', ruler: rulerOf(spokenUnits()) })],
    }),
    computedPart({
      name: 'lash-hot-cold',
      title: 'Lash hot and cold',
      words: {
        say: 'Which lash is wanted hot, which was found cold, and what are block, head, pushrods and valves made of?',
        how: 'A first figure only: the best way is to read one pair cold and hot.',
      },
      turns: true,
      computation: 'lash-hot-cold',
      form: hotColdForm,
      headline: 'headline:working:heat',
      questions: ofAdjusters,
      asked: () => [lashGap({}, { id: 'asked-lash', ruler: rulerOf(spokenUnits()) })],
    }),
  ],
  // What a stop of the lash asks is answered beside its log, that of a plunger beside its turns.
  opens: ({ plan, assessment, workings }) => {
    const tooFar = assessment.stop.find(({ code }) => code === 'plunger-bottomed');
    if (tooFar !== undefined)
      return workings.find(({ id }) => id === tooFar.entryId)?.computation === 'adjuster'
        ? 'adjuster'
        : 'lifter-preload';
    return plan.logFirst || assessment.stop.some(({ code }) => code === 'lash-grew-again')
      ? 'lash'
      : assessment.details.gear.gear === 'bucket'
        ? 'shims'
        : 'adjuster';
  },
};
