import { inSpoken } from '../../../shared/quantities/authored.ts';
import { within } from './compare.ts';
import { expectedLifts, idsOf, isOrdinary, readLobe, valveLift } from './lifts.ts';
import { manyAlike } from './many-alike.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch } from './words.ts';

interface Run {
  readonly ask: string;
  /** Travel there was for the lift. */
  readonly room: number;
  readonly lift: number;
  readonly test: string;
  readonly restsOn: readonly string[];
}

/** At the valve the plunger comes out: it can follow no further than it was pushed in. */
function atValve(input: QuestionInput): Run[] {
  const lift = valveLift(input);
  const room = input.pushedIn ?? input.travel;
  if (lift === undefined || room === undefined) return [];
  return [
    {
      ask: 'Could the tip have left the retainer?',
      room,
      lift,
      test: inSpoken('Push the plunger in by the full lift and .050 in more, zero it and read again.'),
      restsOn: idsOf(input.valvePasses),
    },
  ];
}

/** At the lifter the plunger goes in. One push is stated for the set-up: a long one is meant for the valve. */
function atLobe(input: QuestionInput, t: Tolerances): Run[] {
  const lift = readLobe(input);
  if (lift === undefined || input.travel === undefined || input.lobeSource === 'caliper') return [];
  const own = input.valvePasses.length === 0 && within(input.pushedIn ?? 0, t.lobePushMost);
  const pushed = own ? (input.pushedIn ?? 0) : 0;
  return [
    {
      ask: 'Could the plunger have run out of travel at the lobe?',
      room: input.travel - pushed,
      lift,
      test: inSpoken('Push the plunger in by .050 to .100 in only, zero it and read again.'),
      restsOn: idsOf(input.lobePasses),
    },
  ];
}

function askRun(run: Run, t: Tolerances): Question[] {
  // No indicator reads so far: that is a matter of unit or point.
  if (run.lift > t.valveMost) return [];
  const left = run.room - run.lift;
  if (left >= t.travelLeft - 1e-9) return [];
  return [
    {
      code: 'out-of-travel',
      weight: left <= t.travelReached + 1e-9 ? 'strong' : 'weak',
      ask: run.ask,
      size: `There were ${inch(run.room)} of travel for ${inch(run.lift)}.`,
      test: run.test,
      restsOn: run.restsOn,
    },
  ];
}

/** The same short peak on several valves: the dial may stop there, not the valves. */
function askSamePeak(input: QuestionInput, t: Tolerances): Question[] {
  const lift = valveLift(input);
  if (lift === undefined || input.pushedIn !== undefined || isOrdinary(input, t, lift)) return [];
  const isLong = expectedLifts(input).some(
    (expected) => lift > expected || within(lift - expected, t.liftFits),
  );
  if (isLong || !manyAlike(input, t, t.samePeak)) return [];
  return [
    {
      code: 'out-of-travel',
      weight: 'weak',
      ask: 'Could the indicator stop before the valve does?',
      size: `Several valves peak at ${inch(lift)}.`,
      test: inSpoken('Push the plunger in by the full lift and .050 in more, zero it and read again.'),
      restsOn: idsOf(input.valvePasses),
    },
  ];
}

/** Row 12: the indicator ran out of travel. */
export function outOfTravel(input: QuestionInput, tolerances: Tolerances): Question[] {
  const runs = [...atValve(input), ...atLobe(input, tolerances)].flatMap((run) => askRun(run, tolerances));
  return runs.length > 0 ? runs : askSamePeak(input, tolerances);
}
