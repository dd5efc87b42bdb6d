import type { ReportPartName, StepName } from '../steps.ts';
import { GOALS } from './words.ts';

export type Goal = keyof typeof GOALS;

/** What a caller can want from a call: one plan for each, which every page, card and judgement goes by. */
export interface GoalPlan {
  /** The steps that the goal is about, in the order in which what they lack is asked for, after the first question. */
  readonly asks: readonly StepName[];
  /** Of these, the steps without whose figures there is no answer. */
  readonly waitsFor: readonly StepName[];
  /**
   * What else the answer needs of what those steps ask for, by its code. What is not named is on the steps, and never
   * asked for before the answer is said.
   */
  readonly needs: readonly string[];
  /** The answer rests on the ratio that is read on the engine. */
  readonly byRatio?: boolean;
  /** Parts of the report that stand first; the others follow in the usual order. */
  readonly report: readonly ReportPartName[];
  /** Steps whose items the takeover card must not lose. */
  readonly cards: readonly StepName[];
  /** Parts are to be fitted: they are judged as planned. */
  readonly isChange?: boolean;
  /** The change may have been made before the call: then no plan is asked for. */
  readonly mayBeDone?: boolean;
  /** Setting an adjuster again hides what the call is about: its log comes first, on every valve. */
  readonly logFirst?: boolean;
}

/** What the gaps of a change are made of; the marks of the arms that come off are not. */
const OF_A_CHANGE = [
  'card-lash',
  'centrelines',
  'lifter',
  'mounting',
  'crank',
  'installed-height',
  'spring-load',
  'solid-height',
  'retainer-to-seal',
  'scan-intake',
  'scan-exhaust',
  'closed-gap-intake',
  'closed-gap-exhaust',
] as const;

/** A goal without its plan does not compile; nor does a plan that names a step there is none of. */
const GOAL_PLANS = {
  identify: {
    asks: ['identify'],
    waitsFor: ['identify'],
    needs: ['part-marks', 'cover'],
    report: ['part', 'photographs'],
    cards: ['identify'],
  },
  'verify-ratio': {
    // One valve says nothing of the others: that they are not known is said with the answer.
    asks: ['parts', 'cam', 'sheet', 'ratio'],
    waitsFor: [],
    needs: [],
    byRatio: true,
    report: [],
    cards: ['sheet'],
  },
  'choose-ratio': {
    asks: ['cam', 'parts', 'build', 'scan', 'consequences'],
    waitsFor: ['consequences'],
    needs: OF_A_CHANGE,
    byRatio: true,
    report: ['consequences', 'ratio'],
    cards: ['consequences'],
    isChange: true,
  },
  'clearances-after-a-change': {
    asks: ['cam', 'parts', 'build', 'scan', 'consequences'],
    waitsFor: ['consequences'],
    needs: OF_A_CHANGE,
    byRatio: true,
    report: ['consequences', 'ratio'],
    cards: ['consequences'],
    isChange: true,
    mayBeDone: true,
  },
  geometry: {
    asks: ['geometry'],
    waitsFor: [],
    needs: ['least-sweep'],
    report: ['marks', 'workings', 'photographs'],
    cards: ['geometry'],
  },
  'cam-timing': {
    // Of the card only the centreline is needed, and the step asks for that itself.
    asks: ['timing'],
    waitsFor: [],
    needs: [],
    report: ['workings'],
    cards: ['timing'],
  },
  adjuster: {
    asks: ['noise', 'adjuster'],
    waitsFor: [],
    needs: ['turns'],
    report: ['lash', 'marks', 'workings', 'sheet'],
    cards: ['adjuster', 'noise'],
  },
  'one-valve-differs': {
    asks: ['sheet'],
    waitsFor: ['sheet'],
    needs: [],
    report: ['sheet', 'arms', 'ratio'],
    cards: ['sheet'],
  },
  'noise-or-failure': {
    asks: ['noise', 'adjuster', 'sheet'],
    waitsFor: [],
    needs: ['valves', 'rows'],
    report: ['noise', 'lash', 'marks', 'sheet', 'workings'],
    cards: ['noise', 'adjuster', 'sheet'],
    logFirst: true,
  },
  'returned-part': {
    asks: ['parts', 'identify'],
    waitsFor: [],
    needs: ['part-marks'],
    report: ['part', 'photographs', 'sheet'],
    cards: ['notes'],
  },
} as const satisfies Readonly<Record<Goal, GoalPlan>>;

const isGoal = (text: string): text is Goal => Object.hasOwn(GOALS, text);

/** The goal as it is stored. One that this version does not know is planned as the commonest one. */
export const goalOf = (text: string): Goal => (isGoal(text) ? text : 'verify-ratio');

export const planOf = (goal: string): GoalPlan => GOAL_PLANS[goalOf(goal)];
