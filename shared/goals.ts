import { GOALS } from './schemas/words.ts';

export type Goal = keyof typeof GOALS;

/** What a caller can want from a call: one plan for each, which every page, card and judgement goes by. */
export interface GoalPlan<StepName extends string = string, ReportPart extends string = string> {
  /** The step that the call is about: what it asks for is asked whole, right after the first question. */
  readonly own?: StepName;
  /** Steps whose every lack is a lack of the answer. */
  readonly about: readonly StepName[];
  /** Steps whose own needs the answer waits for. */
  readonly waitsFor: readonly StepName[];
  /** Parts of the report that stand first; the others follow in the usual order. */
  readonly report: readonly ReportPart[];
  /** Steps whose items the takeover card must not lose. */
  readonly cards: readonly StepName[];
  /** Parts are to be fitted: they are judged as planned. */
  readonly isChange?: boolean;
  /** Setting an adjuster again hides what the call is about: its log comes first, on every valve. */
  readonly logFirst?: boolean;
}

/** A goal without its plan does not compile; nor does a plan that names a step there is none of (server/steps). */
export const GOAL_PLANS = {
  identify: {
    own: 'identify',
    about: ['identify'],
    waitsFor: ['identify'],
    report: ['part', 'photographs'],
    cards: ['identify'],
  },
  'verify-ratio': {
    about: ['ratio'],
    waitsFor: [],
    report: [],
    cards: ['sheet'],
  },
  'choose-ratio': {
    about: ['cam', 'build', 'consequences'],
    waitsFor: ['consequences'],
    report: ['consequences', 'ratio'],
    cards: ['consequences'],
    isChange: true,
  },
  'clearances-after-a-change': {
    about: ['cam', 'build', 'consequences'],
    waitsFor: ['consequences'],
    report: ['consequences', 'ratio'],
    cards: ['consequences'],
    isChange: true,
  },
  geometry: {
    own: 'geometry',
    about: ['geometry'],
    waitsFor: [],
    report: ['marks', 'workings', 'photographs'],
    cards: ['geometry'],
  },
  'cam-timing': {
    own: 'timing',
    about: ['timing', 'cam'],
    waitsFor: [],
    report: ['workings'],
    cards: ['timing'],
  },
  adjuster: {
    own: 'adjuster',
    about: ['adjuster'],
    waitsFor: [],
    report: ['lash', 'marks', 'workings', 'sheet'],
    cards: ['adjuster'],
  },
  'noise-or-failure': {
    own: 'adjuster',
    about: ['adjuster', 'sheet'],
    waitsFor: [],
    report: ['lash', 'marks', 'sheet', 'workings'],
    cards: ['adjuster', 'sheet'],
    logFirst: true,
  },
  'returned-part': {
    about: ['parts', 'identify'],
    waitsFor: [],
    report: ['part', 'photographs', 'sheet'],
    cards: ['notes'],
  },
} as const satisfies Readonly<Record<Goal, GoalPlan>>;

export const isGoal = (text: string): text is Goal => Object.hasOwn(GOALS, text);

/** The plan of a goal as it is stored. A goal that this version does not know is planned as the commonest one. */
export const planOf = (goal: string): GoalPlan => GOAL_PLANS[isGoal(goal) ? goal : 'verify-ratio'];
