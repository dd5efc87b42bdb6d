import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { SIDES, type TimedEvent, timedEvent } from '../../../shared/schemas/event-field.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { out, outWord } from '../../../shared/schemas/outputs.ts';
import { angle } from '../../../shared/schemas/quantity-fields.ts';
import {
  evenIfFaulty,
  faultAt,
  oneOfTwoForms,
  twoFormsJsonSchema,
} from '../../../shared/schemas/two-forms.ts';
import { turningCaution } from '../cam/caution.ts';
import { EVENT_SIDES, timingFromEvents } from '../cam/lobe-timing.ts';
import { withinHalfTurn } from '../cam/wrap.ts';
import { allowance } from '../kit/allowances.ts';
import { defineComputation } from '../kit/computation.ts';

const CYCLE = 4 * Math.PI;

const ASKED =
  'The duration is over 2° off the card’s: was each event told from the right side of its dead centre, and at the lift the card states?';

const input = z
  .strictObject({
    before: angle('wheel reading after top dead centre on the way up to full lift').optional(),
    after: angle('wheel reading after top dead centre at the same lift on the way down').optional(),
    opens: timedEvent(SIDES, 'where the valve opens, by TDC for an intake, by BDC for an exhaust').optional(),
    closes: timedEvent(
      SIDES,
      'where the valve closes, by BDC for an intake, by TDC for an exhaust',
    ).optional(),
    side: choice(['intake', 'exhaust'], 'which lobe; left out, intake').optional(),
    card: angle('centreline on the cam card, written positive', { sign: 'not-negative' }).optional(),
    cardDuration: angle('duration on the cam card at the lift of the events', {
      sign: 'positive',
    }).optional(),
    pointerOff: angle(
      'how much the wheel reads too much after TDC, where the pointer was left as it was: the correction of top-dead-centre with the reading after TDC first',
    ).optional(),
  })
  .superRefine(oneOfTwoForms(['before', 'after'], ['opens', 'closes']), evenIfFaulty)
  .superRefine((given, ctx) => {
    const sides = EVENT_SIDES[given.side === 'exhaust' ? 'exhaust' : 'intake'];
    for (const name of ['opens', 'closes'] as const) {
      const told = given[name]?.side;
      if (told === undefined || sides[name].some((each) => each === told)) continue;
      faultAt(ctx, [name, 'side'], 'not-allowed', `must be ${sides[name].join(' or ')}`);
    }
  }, evenIfFaulty)
  .meta(twoFormsJsonSchema(['before', 'after'], ['opens', 'closes']));

const output = z.object({
  centreline: out('angle', 'crank degrees after TDC for an intake, before TDC for an exhaust'),
  advanceAgainstCard: out(
    'angle',
    'how much earlier the cam stands than its card; negative when later',
  ).optional(),
  costs: outWord(
    ['intake', 'exhaust', 'neither'],
    'which valve’s gap to the piston that takes from: earlier the intake’s, later the exhaust’s',
  ).optional(),
  duration: out('angle', 'crank degrees between the two events').optional(),
  durationOverCard: out('angle', 'duration less that of the card; negative when shorter').optional(),
});

type Given = z.output<typeof input>;

/** How the readings of an exhaust are written here, where they look like ones before top dead centre. */
const BEFORE_TOP =
  '. All are counted after top dead centre: what an exhaust reads before it goes in with a minus, 160 BTDC as −160 deg';

/** An intake peaks after the top that it opens at, an exhaust before it: at another place a side was told wrong. */
function checkPlace(given: Given, at: number): void {
  if (at > 0) return;
  const exhaust = given.side === 'exhaust';
  const said = `an ${exhaust ? 'exhaust' : 'intake'} peaks ${exhaust ? 'before' : 'after'} top dead centre, and these put its peak ${Number(((-at * 180) / Math.PI).toFixed(2))}° ${exhaust ? 'after' : 'before'} it`;
  if (given.opens === undefined)
    impossible(
      ['before', 'after'],
      `${said}${exhaust ? BEFORE_TOP : ': what is read before it goes in with a minus'}`,
    );
  impossible(['opens', 'closes'], `${said}: tell each from its own side of its dead centre`);
}

/** The event as a pointer that stands right would have shown it. */
const righted = ({ angle: told, side }: TimedEvent, off: number): TimedEvent => ({
  angle: side.startsWith('A') ? told - off : told + off,
  side,
});

function measured(given: Given): { readonly centreline: number; readonly duration?: number } {
  const { before = 0, after = 0, opens, closes, side = 'intake', pointerOff: off = 0 } = given;
  if (opens !== undefined && closes !== undefined) {
    const timing = timingFromEvents(side, righted(opens, off), righted(closes, off), ['opens', 'closes']);
    return { centreline: timing.centreline, duration: timing.duration };
  }
  if (after <= before)
    impossible(
      ['before', 'after'],
      `the reading after full lift must be the greater of the two${side === 'exhaust' && after > 0 ? BEFORE_TOP : ''}`,
    );
  if (after - before >= CYCLE) impossible(['before', 'after'], 'are a whole cycle of 720° or more apart');
  const peak = (before + after) / 2 - off;
  return { centreline: withinHalfTurn(side === 'intake' ? peak : -peak) };
}

/**
 * The centreline of a lobe from two wheel readings at equal lift, or from its opening and closing events.
 *
 * Equation: centreline = (before + after)/2 after TDC (its opposite, before TDC, for an exhaust), whole turns
 * taken off; or duration/2 less the event by TDC; advanceAgainstCard = card − centreline (intake),
 * centreline − card (exhaust); duration = 180° and the two events; durationOverCard = duration − cardDuration
 *
 * @param before [rad] wheel reading after TDC going up to full lift, negative before TDC
 * @param after [rad] wheel reading after TDC at the same lift going down, greater than before
 * @param opens [rad] opening event with its side: BTDC or ATDC for an intake, BBDC or ABDC for an exhaust
 * @param closes [rad] closing event with its side: ABDC or BBDC for an intake, ATDC or BTDC for an exhaust
 * @param side [1] `intake` or `exhaust`; left out, intake
 * @param card [rad] centreline of the card, written positive, not negative; left out, no comparison
 * @param cardDuration [rad] duration of the card at the lift of the events, above zero; left out, no comparison
 * @param pointerOff [rad] how much the wheel reads too much after TDC, taken off every reading; left out, zero
 * @returns centreline [rad], advanceAgainstCard [rad] (positive: earlier; only with card), costs [1] (only with card),
 * duration [rad] (only with events), durationOverCard [rad] (only with events and cardDuration)
 * @throws not-allowed when an event is told from the wrong dead centre, or both forms are given
 * @throws impossible-input when the peak of an intake is not after top dead centre, or that of an exhaust not before it
 * @throws impossible-input when the second reading is not past the first, or 720° past it
 * @throws impossible-input when the events leave the valve no time open, or over 720°
 *
 * Validity: symmetric lobes; the indicator at the same lift both times, read in the same direction of turning.
 * Source: common practice, no published source.
 */
function centreline(given: Given): z.output<typeof output> {
  const { card, cardDuration, side } = given;
  const found = measured(given);
  checkPlace(given, found.centreline);
  const late = card === undefined ? undefined : found.centreline - card;
  const early = late === undefined || side === 'exhaust' ? late : -late;
  return {
    ...found,
    ...(early === undefined ? {} : { advanceAgainstCard: early, costs: costOf(early) }),
    ...(found.duration === undefined || cardDuration === undefined
      ? {}
      : { durationOverCard: found.duration - cardDuration }),
  };
}

/** Nobody reads a wheel to a billionth of a degree: less is no difference. */
const NO_DIFFERENCE = 1e-9;

/** Earlier, the intake opens nearer to the top; later, the exhaust closes nearer to it. */
const costOf = (early: number) =>
  Math.abs(early) < NO_DIFFERENCE ? 'neither' : early > 0 ? 'intake' : 'exhaust';

export const computation = defineComputation({
  name: 'centreline',
  title: 'Lobe centreline',
  summary:
    'Where a lobe peaks, from equal-lift readings or from its events, and how far that is from the card.',
  words: [
    'intake centreline',
    'exhaust centreline',
    'ICL',
    'ECL',
    'degreeing',
    'equal lift',
    'cam advance',
    'split overlap',
    'duration',
    'opening and closing',
  ],
  input,
  output,
  equation:
    'centreline = (before + after)/2, or duration/2 − the event by TDC; advance = card − centreline (intake), centreline − card (exhaust)',
  tex: '\\mathrm{CL} = \\frac{\\theta_\\mathrm{before}+\\theta_\\mathrm{after}}{2} \\quad\\text{or}\\quad \\frac{D}{2} - \\theta_\\mathrm{TDC\\ event}',
  source: 'common practice, no published source; worked figures 60 and 145.5 from a printed degreeing text',
  validity: 'symmetric lobes; an asymmetric lobe’s peak is off the mean of two equal lifts',
  assumptions: (given) => [
    'a symmetric lobe: the peak is midway between two equal lifts',
    ...(given.side === undefined ? ['the intake lobe, as no side was given'] : []),
    ...(given.opens === undefined
      ? ['both readings at the same lift, counted after top dead centre, the crank turned the same way']
      : ['both events at the same stated lift']),
  ],
  cautions: (_given, { durationOverCard }) => [
    ...(durationOverCard !== undefined && Math.abs(durationOverCard) > allowance('cam-timing')
      ? [ASKED]
      : []),
    turningCaution,
  ],
  example: {
    inputs: {
      before: { value: 60, unit: 'deg' },
      after: { value: 145.5, unit: 'deg' },
      card: { value: 106, unit: 'deg' },
    },
    result: {
      centreline: { value: 102.75, unit: 'deg' },
      advanceAgainstCard: { value: 3.25, unit: 'deg' },
      costs: 'intake',
    },
  },
  headline: () => ['centreline'],
  compute: centreline,
});
