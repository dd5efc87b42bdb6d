import type { SetUpRatio } from '../assessment/ratio/ratio.ts';
import { answerOf } from '../call/answered.ts';
import { type CallContext, valveName } from '../call/context.ts';
import { STEP_NAMES, type StepName } from '../call/steps.ts';
import type { Question } from '../mechanics/questions/types.ts';
import { stillStanding } from '../records/corrections/entries.ts';
import type { Reading } from '../records/readings/readings.ts';

/** One thing that a step asks for. `must`: the answer of the call waits for it. */
export interface Need {
  readonly text: string;
  readonly have: boolean;
  readonly must: boolean;
  /** It is a whole question, which stands by itself; else a thing that is named. */
  readonly isQuestion?: boolean;
}

const must = (text: string, have: boolean): Need => ({ text, have, must: true });
const also = (text: string, have: boolean): Need => ({ text, have, must: false });

const PASSES = 3;
const passes = (readings: readonly Reading[], kind: string) =>
  stillStanding(readings).filter((reading) => reading.kind === kind).length;

const hasWorking = (context: CallContext, name: string) =>
  context.events.some(
    (event) => event.kind === 'working-kept' && Reflect.get(event.data, 'computation') === name,
  );

/** Questions of a set-up that nobody has answered yet. */
export const openQuestions = (context: CallContext, found: SetUpRatio): Question[] =>
  found.questions.filter((question) => answerOf(context.answers, found.setUp.id, question) === undefined);

function ofBuild({ build: { spec } }: CallContext): Need[] {
  const { engine, springs } = spec;
  return [
    also('lifter type', engine?.lifter !== undefined),
    also('how the rockers are mounted', engine?.rockerMounting !== undefined),
    also(
      'bore, stroke and rod',
      [engine?.bore, engine?.stroke, engine?.rodLength].every((each) => each !== undefined),
    ),
    also('installed height', springs?.installedHeight !== undefined),
    also('seat load and rate', springs?.seatLoad !== undefined && springs.rate !== undefined),
    also('coil-bind height', springs?.solidHeight !== undefined),
  ];
}

function ofCam({ build: { spec } }: CallContext): Need[] {
  return [
    must('lobe lift, intake', spec.cam?.intake?.lobeLift !== undefined),
    must('lobe lift, exhaust', spec.cam?.exhaust?.lobeLift !== undefined),
    must('ratio the card assumes', spec.cam?.assumedRatio !== undefined),
    also('lash on the card', spec.cam?.intake?.lash !== undefined && spec.cam.exhaust?.lash !== undefined),
    also(
      'centrelines',
      spec.cam?.intake?.centreline !== undefined && spec.cam.exhaust?.centreline !== undefined,
    ),
  ];
}

function ofParts(context: CallContext): Need[] {
  return [
    must('an arm with its marks', context.arms.length > 0),
    must('which valve it sits on', context.now.length > 0),
    must('ratio the rockers are sold as', context.build.spec.rockers?.nominalRatio !== undefined),
  ];
}

/** Only a call that is about finding out what a part is waits for it. */
function ofIdentify({ call, partReadings }: CallContext): Need[] {
  const asked = call.goal === 'identify' ? must : also;
  const read = (kind: string) =>
    stillStanding(partReadings).filter((reading) => reading.kind === kind).length;
  const holes = read('hole-across-trunnion');
  return [
    asked(`hole across the trunnion, both ways: ${Math.min(holes, 2)} of 2`, holes >= 2),
    asked('width across the trunnion', read('width-across-trunnion') > 0),
    asked('rings', read('rings') > 0),
    also('roller, body and arms', read('roller-diameter') + read('body-width') + read('pivot-to-tip') > 2),
    also('marks, each word for word', read('ratio-stamp') + read('other-number') + read('box-label') > 0),
  ];
}

function ofRatio(context: CallContext): Need[] {
  const found = context.ratios.at(-1);
  if (found === undefined) return [must('how it is measured, before the first reading', false)];
  const { method } = found.setUp;
  const on = valveName(found.setUp);
  const lobes = found.lobe.readings.length;
  const valves = passes(found.readings, 'valve-lift');
  const open = openQuestions(context, found);
  return [
    must('spring, lifter and lash said', ![method.spring, method.lifter, method.lash].includes('not-said')),
    ...(method.lobeSource === 'indicator'
      ? [must(`lobe lift ${on}: ${lobes} of ${PASSES} passes`, lobes >= PASSES)]
      : []),
    must(`valve lift ${on}: ${valves} of ${PASSES} passes`, valves >= PASSES),
    ...open.map((question) => ({ ...must(question.ask, false), isQuestion: true })),
    must(
      'a reading on a light spring, to set against the stamp',
      context.ratios.some((each) => each.result !== undefined && each.setUp.method.spring === 'light'),
    ),
  ];
}

function ofNotes(context: CallContext): Need[] {
  const open = context.notes.filter((note) => note.kind === 'promise' && note.doneAt === undefined);
  return [
    must(
      'what was found or advised',
      context.notes.some((note) => note.kind !== 'promise'),
    ),
    ...open.map((note) => must(`promise open: ${note.body.slice(0, 80)}`, false)),
  ];
}

function ofTriage({ call }: CallContext): Need[] {
  return [
    must('runs, has run or apart', call.engineState !== 'not-asked'),
    must('anything hit, bent, loose or tight', call.contact !== 'not-asked'),
    ...(call.held ? [must('the hold to be lifted', false)] : []),
  ];
}

const has = ({ events }: CallContext, kind: string) => events.some((event) => event.kind === kind);

function ofSheet(context: CallContext): Need[] {
  return [also('lobe lift and valve lift, valve by valve', has(context, 'sheet-readings-kept'))];
}

/** A call about a change of ratio waits for what the change does. */
function ofConsequences(context: CallContext): Need[] {
  const { springs, clearances } = context.build.spec;
  const isGoal = ['clearances-after-a-change', 'choose-ratio'].includes(context.call.goal);
  return [
    also(
      'a measured ratio',
      context.ratios.some((found) => found.result !== undefined),
    ),
    also('retainer to seal, valve shut', springs?.retainerToSeal !== undefined),
    also(
      'closed valve to piston, both valves',
      clearances?.intake?.closedGapAtTdc !== undefined && clearances.exhaust?.closedGapAtTdc !== undefined,
    ),
    (isGoal ? must : also)('the figures before and after on the tape', has(context, 'consequences-kept')),
  ];
}

/** What the least sweep is calculated from: kept by itself, or known from the build. */
function ofGeometry(context: CallContext): Need[] {
  const { cam, rockers } = context.build.spec;
  const lift = cam?.intake?.lobeLift ?? cam?.exhaust?.lobeLift;
  const known = rockers?.pivotToTip !== undefined && rockers.nominalRatio !== undefined && lift !== undefined;
  return [
    also('a tip mark: its width, then its place', has(context, 'tip-mark-kept')),
    also('arm and lift, for the least sweep', known || hasWorking(context, 'roller-sweep')),
  ];
}

const NEEDS: Readonly<Record<StepName, (context: CallContext) => Need[]>> = {
  triage: ofTriage,
  build: ofBuild,
  cam: ofCam,
  parts: ofParts,
  identify: ofIdentify,
  ratio: ofRatio,
  sheet: ofSheet,
  consequences: ofConsequences,
  geometry: ofGeometry,
  timing: (context) => [
    also('both readings at the stop', hasWorking(context, 'top-dead-centre')),
    also('centreline, from equal drop or from events', hasWorking(context, 'centreline')),
  ],
  adjuster: (context) => [
    // Setting a noisy one again hides it: there the log is asked for, not the turns.
    ...(context.call.goal === 'noise-or-failure'
      ? []
      : [also('what the turns do', hasWorking(context, 'adjuster'))]),
    also('a lash as it was found or set', has(context, 'lash-kept')),
  ],
  notes: ofNotes,
};

export const needsOf = (step: StepName, context: CallContext): Need[] => NEEDS[step](context);

const ORDER: readonly StepName[] = [
  'triage',
  'identify',
  'parts',
  'cam',
  'ratio',
  'build',
  'sheet',
  'consequences',
  'notes',
];

/** The step a goal is about, where that is not the ratio itself. */
const OWN_STEP: Readonly<Record<string, StepName>> = {
  geometry: 'geometry',
  'cam-timing': 'timing',
  adjuster: 'adjuster',
  'noise-or-failure': 'adjuster',
  identify: 'identify',
};

/** The step that is next: the first with something that the answer waits for; with nothing left, the notes. */
export function nextStep(context: CallContext): { step: StepName; why: string } {
  const own = OWN_STEP[context.call.goal];
  for (const step of own === undefined ? ORDER : ['triage' as const, own, ...ORDER]) {
    // What the caller rang for is asked for whole; of the other steps only what the answer waits for.
    const lacking = needsOf(step, context).find((need) => (need.must || step === own) && !need.have);
    if (lacking !== undefined)
      return {
        step,
        // What a person typed, such as a promise, may have its full stop already.
        why: `Still open: ${lacking.text}${/[.?]$/.test(lacking.text) ? '' : '.'}`,
      };
  }
  return { step: 'notes', why: 'Everything that was asked for is there.' };
}

export const followingStep = (step: StepName): StepName | undefined =>
  STEP_NAMES[STEP_NAMES.indexOf(step) + 1];
