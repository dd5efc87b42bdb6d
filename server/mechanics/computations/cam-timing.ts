import { z } from 'zod';
import { timedEvent } from '../../../shared/schemas/event-field.ts';
import { out, outEvent } from '../../../shared/schemas/outputs.ts';
import { angle } from '../../../shared/schemas/quantity-fields.ts';
import { evenIfFaulty, oneOfTwoForms, twoFormsJsonSchema } from '../../../shared/schemas/two-forms.ts';
import { turningCaution } from '../cam/caution.ts';
import {
  EVENT_SIDES,
  type LobeSide,
  type LobeTiming,
  timingFromCentreline,
  timingFromEvents,
} from '../cam/lobe-timing.ts';
import { defineComputation } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';

function lobe(side: LobeSide, from: string) {
  return z
    .strictObject({
      opens: timedEvent(EVENT_SIDES[side].opens, `where the ${side} valve opens`).optional(),
      closes: timedEvent(EVENT_SIDES[side].closes, `where the ${side} valve closes`).optional(),
      duration: angle('crank degrees open at the stated lift', { sign: 'positive' }).optional(),
      centreline: angle(`crank degrees ${from}, written positive`, { sign: 'not-negative' }).optional(),
    })
    .superRefine(oneOfTwoForms(['opens', 'closes'], ['duration', 'centreline']), evenIfFaulty)
    .meta({
      description: `the ${side} lobe: its two events, or its duration and centreline`,
      ...twoFormsJsonSchema(['opens', 'closes'], ['duration', 'centreline']),
    });
}

const input = z.strictObject({
  intake: lobe('intake', 'after top dead centre'),
  exhaust: lobe('exhaust', 'before top dead centre'),
});

const output = z.object({
  intakeDuration: out('angle', 'crank degrees the intake is open'),
  exhaustDuration: out('angle', 'crank degrees the exhaust is open'),
  intakeCentreline: out('angle', 'crank degrees after top dead centre'),
  exhaustCentreline: out('angle', 'crank degrees before top dead centre'),
  lobeSeparation: out('angle', 'cam degrees between the two peaks'),
  overlap: out('angle', 'crank degrees with both open; negative when both are shut for that long'),
  advance: out('angle', 'crank degrees the cam is ground or set early; negative when late'),
  intakeOpens: outEvent('BTDC', 'where the intake opens; negative is after top dead centre'),
  intakeCloses: outEvent('ABDC', 'where the intake closes; negative is before bottom dead centre'),
  exhaustOpens: outEvent('BBDC', 'where the exhaust opens; negative is after bottom dead centre'),
  exhaustCloses: outEvent('ATDC', 'where the exhaust closes; negative is before top dead centre'),
});

function timingOf(side: LobeSide, given: z.output<typeof input>[LobeSide]): LobeTiming {
  const { opens, closes, duration = 0, centreline = 0 } = given;
  if (opens !== undefined && closes !== undefined) {
    return timingFromEvents(side, opens, closes, [`${side}/opens`, `${side}/closes`]);
  }
  return timingFromCentreline(duration, centreline, {
    duration: `${side}/duration`,
    centreline: `${side}/centreline`,
  });
}

/**
 * Durations, centrelines, lobe separation, overlap, advance and the four events of a cam.
 *
 * Equation: duration = opens + 180° + closes; intakeCentreline = intakeDuration/2 − intakeOpens;
 * exhaustCentreline = exhaustDuration/2 − exhaustCloses; lobeSeparation = (intakeCentreline + exhaustCentreline)/2;
 * overlap = intakeOpens + exhaustCloses; advance = lobeSeparation − intakeCentreline
 *
 * @param intake [rad] its events `opens` (BTDC or ATDC) and `closes` (ABDC or BBDC), or its `duration` (above
 * zero, to 720°) and `centreline` (after TDC, written positive)
 * @param exhaust [rad] its events `opens` (BBDC or ABDC) and `closes` (ATDC or BTDC), or its `duration` and
 * `centreline` (before TDC, written positive)
 * @returns intakeDuration [rad], exhaustDuration [rad], intakeCentreline [rad] (after TDC), exhaustCentreline [rad]
 * (before TDC), lobeSeparation [rad of the cam], overlap [rad], advance [rad] (positive: earlier), intakeOpens
 * [rad BTDC], intakeCloses [rad ABDC], exhaustOpens [rad BBDC], exhaustCloses [rad ATDC]
 * @throws not-allowed when an event is told from the wrong dead centre, or both forms are given
 * @throws impossible-input when a valve would close before it opens
 * @throws impossible-input when a duration is over 720° or a centreline over 360°
 *
 * Validity: symmetric lobes; all figures at one stated lift.
 * Source: definitions, common practice, no published source.
 */
function camTiming(given: z.output<typeof input>): z.output<typeof output> {
  everyFault(
    () => timingOf('intake', given.intake),
    () => timingOf('exhaust', given.exhaust),
  );
  const intake = timingOf('intake', given.intake);
  const exhaust = timingOf('exhaust', given.exhaust);
  return {
    intakeDuration: intake.duration,
    exhaustDuration: exhaust.duration,
    intakeCentreline: intake.centreline,
    exhaustCentreline: exhaust.centreline,
    lobeSeparation: (intake.centreline + exhaust.centreline) / 2,
    overlap: intake.atTop + exhaust.atTop,
    advance: (exhaust.centreline - intake.centreline) / 2,
    intakeOpens: intake.atTop,
    intakeCloses: intake.atBottom,
    exhaustOpens: exhaust.atBottom,
    exhaustCloses: exhaust.atTop,
  };
}

const deg = (value: number) => ({ value, unit: 'deg' });

export const computation = defineComputation({
  name: 'cam-timing',
  title: 'Cam timing',
  summary: 'Duration, centrelines, lobe separation, overlap, advance and the four events of a cam.',
  words: [
    'cam card',
    'duration',
    'overlap',
    'lobe separation',
    'LSA',
    'advance',
    'retard',
    'valve events',
    'ICL',
    'ECL',
  ],
  input,
  output,
  equation:
    'duration = opens + 180° + closes; centreline = duration/2 − the event by TDC; lobe separation = (ICL + ECL)/2; overlap = IO + EC; advance = lobe separation − ICL',
  tex: '\\mathrm{LSA} = \\frac{\\mathrm{ICL}+\\mathrm{ECL}}{2}, \\qquad \\mathrm{ICL} = \\frac{D_I}{2} - \\mathrm{IO}, \\qquad \\mathrm{ECL} = \\frac{D_E}{2} - \\mathrm{EC}, \\qquad \\mathrm{overlap} = \\mathrm{IO} + \\mathrm{EC}',
  source: 'definitions, common practice, no published source',
  validity:
    'symmetric lobes, every figure at the same stated lift; crank degrees, lobe separation alone in cam degrees',
  assumptions: () => [
    'every event and duration is at the same stated lift',
    'symmetric lobes: the centreline is midway between the events',
    'advance is set against lobes that stand evenly about top dead centre (intake centreline = lobe separation)',
  ],
  cautions: () => [turningCaution],
  example: {
    inputs: {
      intake: { opens: { ...deg(31), side: 'BTDC' }, closes: { ...deg(63), side: 'ABDC' } },
      exhaust: { opens: { ...deg(77), side: 'BBDC' }, closes: { ...deg(29), side: 'ATDC' } },
    },
    result: {
      intakeDuration: deg(274),
      exhaustDuration: deg(286),
      intakeCentreline: deg(106),
      exhaustCentreline: deg(114),
      lobeSeparation: deg(110),
      overlap: deg(60),
      advance: deg(4),
      intakeOpens: { ...deg(31), side: 'BTDC' },
      intakeCloses: { ...deg(63), side: 'ABDC' },
      exhaustOpens: { ...deg(77), side: 'BBDC' },
      exhaustCloses: { ...deg(29), side: 'ATDC' },
    },
  },
  headline: () => ['lobeSeparation'],
  compute: camTiming,
});
