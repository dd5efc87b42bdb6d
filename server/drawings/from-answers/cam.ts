import { z } from 'zod';
import { camTiming as drawCamTiming } from '../cam-timing.ts';
import { amount, degrees } from '../drawing.ts';
import { centreline as drawCentreline, topDeadCentre as drawTop } from '../wheel-readings.ts';
import { draws } from './draws.ts';

export const camTiming = draws(
  z.unknown(),
  z.object({
    intakeOpens: amount,
    intakeCloses: amount,
    exhaustOpens: amount,
    exhaustCloses: amount,
    intakeDuration: amount,
    exhaustDuration: amount,
    overlap: amount,
  }),
  (_given, result, drawnFor) => drawCamTiming(result, drawnFor),
);

export const topDeadCentre = draws(
  z.object({ stopReadings: z.tuple([degrees, degrees]) }),
  z.object({ trueReading: amount, correction: amount }),
  ({ stopReadings: [afterTop, beforeTop] }, result, drawnFor) =>
    drawTop({ afterTop, beforeTop, ...result }, drawnFor),
);

const event = z.object({ angle: degrees, side: z.enum(['BTDC', 'ATDC', 'BBDC', 'ABDC']) });

/** Wheel angle after top dead centre of an event. */
function wheelAngle({ angle, side }: z.output<typeof event>): number {
  const dead = side.endsWith('TDC') ? 0 : 180;
  return side.startsWith('B') ? dead - angle : dead + angle;
}

/** What a pointer that stands right would have shown. */
const righted = ({ angle, side }: z.output<typeof event>, off: number): z.output<typeof event> => ({
  angle: side.startsWith('A') ? angle - off : angle + off,
  side,
});

const named = (value: z.output<typeof event>, name: string) => ({
  at: wheelAngle(value),
  name,
  figure: `${Number(value.angle.toFixed(2))} ${value.side}`,
});

const short = (angle: number) => String(Number(angle.toFixed(2)));

/** What was read as it was read, and beside it what a pointer that stands right would have shown. */
const read = (angle: number, off: number) => ({
  at: angle - off,
  ...(off === 0
    ? { name: 'read', figure: short(angle) }
    : { name: `read ${short(angle)},`, figure: `true ${short(angle - off)}` }),
});

export const centreline = draws(
  z.object({
    before: degrees.optional(),
    after: degrees.optional(),
    opens: event.optional(),
    closes: event.optional(),
    side: z.enum(['intake', 'exhaust']).default('intake'),
    card: degrees.optional(),
    pointerOff: degrees.default(0),
  }),
  z.object({ centreline: amount }),
  ({ before, after, opens, closes, side, card, pointerOff: off }, result, drawnFor) => {
    const whole = { side, card, centreline: result.centreline };
    if (before !== undefined && after !== undefined) {
      return drawCentreline({ ...whole, from: read(before, off), to: read(after, off) }, drawnFor);
    }
    if (opens === undefined || closes === undefined) return undefined;
    const to = named(righted(closes, off), 'closes');
    const from = named(righted(opens, off), 'opens');
    // The valve closes after it opens: its arc goes on clockwise past the top of the wheel where it must.
    return drawCentreline(
      { ...whole, from, to: { ...to, at: to.at < from.at ? to.at + 360 : to.at } },
      drawnFor,
    );
  },
);
