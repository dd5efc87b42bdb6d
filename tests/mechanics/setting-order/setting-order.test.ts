import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { settingOrder } from '../../../server/mechanics/setting-order/setting-order.ts';
import {
  DEGREE,
  ORDINARY,
  type ValveWindows,
  windowsOf,
} from '../../../server/mechanics/setting-order/timing.ts';

/*
 * Against another way of finding it: both cams of every cylinder turned through 720° by the degree, from opening and
 * closing events alone, and looked whether the lifter of the valve to be set is on its base circle.
 */

/** Events in degrees as a card tells them, seat to seat. */
interface Events {
  readonly intakeOpensBtdc: number;
  readonly intakeClosesAbdc: number;
  readonly exhaustOpensBbdc: number;
  readonly exhaustClosesAtdc: number;
}
/** Invented, of the size of a mild, an ordinary and a long cam. */
const MILD: Events = {
  intakeOpensBtdc: 20,
  intakeClosesAbdc: 58,
  exhaustOpensBbdc: 62,
  exhaustClosesAtdc: 20,
};
const ORDINARY_CAM: Events = {
  intakeOpensBtdc: 32,
  intakeClosesAbdc: 72,
  exhaustOpensBbdc: 76,
  exhaustClosesAtdc: 30,
};
const LONG: Events = {
  intakeOpensBtdc: 46,
  intakeClosesAbdc: 84,
  exhaustOpensBbdc: 92,
  exhaustClosesAtdc: 44,
};

/**
 * Lift of a lifter, by its cylinder's crank in degrees after firing: up from where the event opens it, down to where it
 * closes it, as a half sine; nothing on the base circle. Firing at 0, bottom at 180, overlap at 360, bottom at 540.
 */
function lifts({ intakeOpensBtdc, intakeClosesAbdc, exhaustOpensBbdc, exhaustClosesAtdc }: Events) {
  const hump = (opens: number, closes: number) => (crank: number) => {
    const at = (((crank - opens) % 720) + 720) % 720;
    const open = closes - opens;
    return at <= open ? Math.sin((Math.PI * at) / open) : 0;
  };
  return {
    intake: hump(360 - intakeOpensBtdc, 540 + intakeClosesAbdc),
    exhaust: hump(180 - exhaustOpensBbdc, 360 + exhaustClosesAtdc),
  };
}

const windowsFrom = ({ intakeOpensBtdc, intakeClosesAbdc, exhaustOpensBbdc, exhaustClosesAtdc }: Events) => {
  const window = (opens: number, closes: number) => ({
    centre: ((opens + closes) / 2) * DEGREE,
    open: (closes - opens) * DEGREE,
  });
  return {
    intake: window(360 - intakeOpensBtdc, 540 + intakeClosesAbdc),
    exhaust: window(180 - exhaustOpensBbdc, 360 + exhaustClosesAtdc),
  } satisfies ValveWindows;
};

const ORDERS = {
  'in-line four': [1, 3, 4, 2],
  'in-line six': [1, 5, 3, 6, 2, 4],
  V6: [1, 6, 5, 4, 3, 2],
  V8: [1, 8, 4, 3, 6, 5, 7, 2],
  'another V8': [1, 3, 7, 2, 6, 5, 4, 8],
  'in-line five': [1, 2, 4, 5, 3],
  twelve: [1, 7, 5, 11, 3, 9, 6, 12, 2, 8, 4, 10],
} as const;

/** Lift of one valve when the crank is so many degrees past the firing of the first of the order. */
function liftAt(
  order: readonly number[],
  cylinder: number,
  side: 'intake' | 'exhaust',
  crank: number,
  cam: Events,
) {
  const fires = (order.indexOf(cylinder) * 720) / order.length;
  return lifts(cam)[side](crank - fires);
}

const inDegrees = (radians: number) => radians / DEGREE;

describe.each(Object.entries(ORDERS))('%s', (_, order) => {
  test.each([
    ['mild', MILD],
    ['ordinary', ORDINARY_CAM],
    ['long', LONG],
  ])(
    'exhaust opening, intake closing: each valve is on its base circle where it is set, %s cam',
    (_name, cam) => {
      const { rows } = settingOrder(order, windowsFrom(cam));
      expect(rows.map(({ cylinder }) => cylinder)).toEqual(order);
      for (const { cylinder, setIntakeAt, setExhaustAt } of rows) {
        const at = inDegrees(setIntakeAt);
        // The exhaust begins to move there, and the intake is still for 20° on either side.
        expect(liftAt(order, cylinder, 'exhaust', at - 2, cam)).toBe(0);
        expect(liftAt(order, cylinder, 'exhaust', at + 2, cam)).toBeGreaterThan(0);
        const then = inDegrees(setExhaustAt);
        expect(liftAt(order, cylinder, 'intake', then, cam)).toBeGreaterThan(0);
        expect(liftAt(order, cylinder, 'intake', then + 12, cam)).toBe(0);
        for (const off of [-20, 0, 20]) {
          expect(liftAt(order, cylinder, 'intake', at + off, cam)).toBe(0);
          expect(liftAt(order, cylinder, 'exhaust', then + off, cam)).toBe(0);
        }
      }
    },
  );

  test('two positions: each valve once, and on its base circle there, 20° of the crank either way', () => {
    const { twoPositions, whyNot } = settingOrder(order, windowsFrom(MILD));
    if (order.length % 2 !== 0) {
      expect([twoPositions, whyNot]).toEqual([undefined, 'odd-count']);
      return;
    }
    const both = twoPositions ?? [];
    expect(both.flatMap(({ intakes }) => intakes).sort((a, b) => a - b)).toEqual(
      [...order].sort((a, b) => a - b),
    );
    expect(both.flatMap(({ exhausts }) => exhausts).sort((a, b) => a - b)).toEqual(
      [...order].sort((a, b) => a - b),
    );
    both.forEach(({ firing, intakes, exhausts }, index) => {
      expect(firing).toBe(order[(index * order.length) / 2]);
      for (const off of [-20, -10, 0, 10, 20]) {
        for (const cylinder of intakes)
          expect(liftAt(order, cylinder, 'intake', index * 360 + off, MILD)).toBe(0);
        for (const cylinder of exhausts)
          expect(liftAt(order, cylinder, 'exhaust', index * 360 + off, MILD)).toBe(0);
      }
    });
  });
});

test('as workshop manuals print it, from memory: four, six and eight cylinders', () => {
  const said = (order: readonly number[]) =>
    settingOrder(order, ORDINARY).twoPositions?.map(
      ({ firing, intakes, exhausts }) => `${firing}: in ${intakes.join(' ')}, ex ${exhausts.join(' ')}`,
    );
  expect(said(ORDERS['in-line four'])).toEqual(['1: in 1 2, ex 1 3', '4: in 3 4, ex 2 4']);
  expect(said(ORDERS['in-line six'])).toEqual(['1: in 1 2 4, ex 1 3 5', '6: in 3 5 6, ex 2 4 6']);
  expect(said(ORDERS.V8)).toEqual(['1: in 1 2 5 7, ex 1 3 4 8', '6: in 3 4 6 8, ex 2 5 6 7']);
});

test('too long a cam, or too many cylinders for it, leaves no room: then one by one', () => {
  // A twelve fires every 60°, so an exhaust is set 60° past overlap; closing at 44 leaves 16 of the 20.
  expect(settingOrder(ORDERS.twelve, windowsFrom(LONG)).whyNot).toBe('no-room');
  expect(settingOrder(ORDERS.twelve, windowsFrom(MILD)).whyNot).toBeUndefined();
  expect(settingOrder(ORDERS.V8, windowsFrom(LONG)).whyNot).toBeUndefined();
  expect(settingOrder([1, 2], windowsFrom(MILD)).whyNot).toBe('few-cylinders');
});

test('wherever two positions are offered, the turned cams agree; wherever they leave room, they are offered', () => {
  const orders = fc.constantFrom(4, 6, 8, 10, 12).chain((count) =>
    fc.shuffledSubarray(
      Array.from({ length: count }, (_, index) => index + 1),
      { minLength: count },
    ),
  );
  const angle = (min: number, max: number) => fc.integer({ min, max });
  fc.assert(
    fc.property(
      orders,
      angle(0, 60),
      angle(40, 110),
      angle(40, 110),
      angle(0, 60),
      (order, io, ic, eo, ec) => {
        const cam = {
          intakeOpensBtdc: io,
          intakeClosesAbdc: ic,
          exhaustOpensBbdc: eo,
          exhaustClosesAtdc: ec,
        };
        const { twoPositions } = settingOrder(order, windowsFrom(cam));
        // By hand: the nearest to overlap are one firing away from it.
        expect(twoPositions !== undefined).toBe(720 / order.length - Math.max(io, ec) >= 20);
        for (const [index, { intakes, exhausts }] of (twoPositions ?? []).entries())
          for (const off of [-19, 19]) {
            for (const cylinder of intakes)
              expect(liftAt(order, cylinder, 'intake', index * 360 + off, cam)).toBe(0);
            for (const cylinder of exhausts)
              expect(liftAt(order, cylinder, 'exhaust', index * 360 + off, cam)).toBe(0);
          }
      },
    ),
  );
});

test('the card’s own durations and centrelines, widened for the ramps: 224 at .050 is 294 by hand', () => {
  const lobe = (duration: number, centreline: number) => ({
    centreline: centreline * DEGREE,
    durations: [{ atLift: 0.05 * 0.0254, duration: duration * DEGREE }],
  });
  const { windows, fromCard } = windowsOf({ intake: lobe(224, 106), exhaust: lobe(230, 114) });
  expect(fromCard).toBe(true);
  expect(inDegrees(windows.intake.open)).toBeCloseTo(294, 9);
  expect([inDegrees(windows.intake.centre), inDegrees(windows.exhaust.centre)].map(Math.round)).toEqual([
    466, 246,
  ]);
  expect(windowsOf({ intake: {}, exhaust: lobe(230, 114) })).toMatchObject({
    fromCard: false,
    windows: { intake: ORDINARY.intake },
  });
});
