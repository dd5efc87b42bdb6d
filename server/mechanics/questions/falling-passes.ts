import { nearest, within } from './compare.ts';
import { expectedLifts, idsOf, liftsOf, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch } from './words.ts';

const PASSES_TO_JUDGE = 3;

/** Mean fall per pass; undefined unless every pass is under the one before it. */
function fallPerPass(lifts: readonly number[]): number | undefined {
  const first = lifts[0];
  const last = lifts.at(-1);
  if (first === undefined || last === undefined || lifts.length < 2) return undefined;
  const steady = lifts.every((lift, i) => i === 0 || lift < (lifts[i - 1] ?? lift));
  return steady ? (first - last) / (lifts.length - 1) : undefined;
}

function isShort(input: QuestionInput, t: Tolerances): boolean {
  const lift = valveLift(input);
  if (lift === undefined) return false;
  const expected = nearest(lift, expectedLifts(input));
  return expected !== undefined && expected - lift >= t.sinkShort - 1e-9;
}

function weightOf(input: QuestionInput, t: Tolerances, fall: number): Question['weight'] | undefined {
  // Half a turn and more is a count, and asked about as one.
  if (fall >= input.perTurn / 2) return undefined;
  const clear = !within(fall, t.sinkPerPass);
  const slight = input.valvePasses.length >= PASSES_TO_JUDGE && fall >= t.sinkPerPassDoubtful - 1e-9;
  if (!clear && !slight) return undefined;
  if (input.lifter !== 'hydraulic') return 'weak';
  const short = input.spring === 'light' && isShort(input, t);
  return clear || short ? 'strong' : 'weak';
}

/** Too few passes of a hydraulic lifter under its running spring to see whether it sinks. */
function askMorePasses(input: QuestionInput): Question[] {
  const few = input.valvePasses.length > 0 && input.valvePasses.length < PASSES_TO_JUDGE;
  if (!few || input.lifter !== 'hydraulic' || input.spring !== 'running') return [];
  return [
    {
      code: 'falling-passes',
      weight: 'weak',
      ask: 'Could the lifter be sinking under the running spring?',
      size: 'What the plunger loses, times the ratio, is missing at the valve.',
      test: 'Take three passes in order and see whether they fall.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}

const isFirm = ({ lifter }: QuestionInput): boolean => lifter === 'solid' || lifter === 'locked';

const isOfValve = ({ valvePasses }: QuestionInput, ids: readonly string[]): boolean =>
  valvePasses.some(({ id }) => ids.includes(id));

/** Passes that rise, or that fall over a lifter which cannot sink, or lobe passes that fall or rise: no lifter does that, a base that slips does. */
export function driftingPasses(input: QuestionInput, t: Tolerances): Question[] {
  const ask = (what: string, passes: QuestionInput['lobePasses'], falls: boolean): Question[] => {
    if (passes.length < PASSES_TO_JUDGE) return [];
    const lifts = liftsOf(passes);
    const drift = fallPerPass(falls ? lifts : lifts.toReversed());
    if (drift === undefined || within(drift, t.sinkPerPass) || drift >= input.perTurn / 2) return [];
    return [
      {
        code: 'drifting-passes',
        weight: 'strong',
        ask: `Could the indicator base be slipping? Every ${what} is ${falls ? 'under' : 'over'} the last.`,
        size: `They ${falls ? 'fall' : 'rise'} ${inch(drift)} a pass; their mean says nothing.`,
        test: 'Tighten the base, look at the zero, and take three more passes.',
        restsOn: idsOf(passes),
      },
    ];
  };
  return [
    ...ask('lobe pass', input.lobePasses, true),
    ...ask('lobe pass', input.lobePasses, false),
    ...ask('pass', input.valvePasses, false),
    // A lifter that cannot sink leaves the base.
    ...(isFirm(input) ? ask('pass', input.valvePasses, true) : []),
  ];
}

/** Row 7: the passes fall because the lifter bleeds down. */
export function fallingPasses(input: QuestionInput, tolerances: Tolerances): Question[] {
  const fall = fallPerPass(liftsOf(input.valvePasses));
  const weight = fall === undefined ? undefined : weightOf(input, tolerances, fall);
  if (fall === undefined || weight === undefined) return askMorePasses(input);
  const firm = isFirm(input);
  if (firm && driftingPasses(input, tolerances).some(({ restsOn }) => isOfValve(input, restsOn))) return [];
  return [
    {
      code: 'falling-passes',
      weight,
      ask: firm
        ? 'Could the indicator base be slipping? Every pass is under the last.'
        : 'Could the lifter be sinking? Every pass is under the last.',
      size: `They fall ${inch(fall)} a pass; their mean says nothing.`,
      test: firm
        ? 'Tighten the base, look at the zero, and take three more passes.'
        : 'Use a solid lifter, or one locked solid of the same seat height, on a light spring.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}
