import { describe, expect, test } from 'vitest';
import { withinHalfCycle, withinHalfTurn } from '../../server/mechanics/cam/wrap.ts';
import { computation as camTiming } from '../../server/mechanics/computations/cam-timing.ts';
import { computation } from '../../server/mechanics/computations/centreline.ts';
import { computation as topDeadCentre } from '../../server/mechanics/computations/top-dead-centre.ts';
import { deg } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const { run, refused } = runner(computation);
const wheel = (before: number, after: number, more: object = {}) => ({
  before: deg(before),
  after: deg(after),
  ...more,
});
const events = { opens: '31 BTDC', closes: '63 ABDC' };
const READINGS = 'counted after top dead centre';

describeSaid(computation, {
  assumes: [
    ['readings', wheel(60, 145.5), ['symmetric', 'no side was given', READINGS]],
    ['a side', wheel(60, 145.5, { side: 'intake' }), ['symmetric', READINGS]],
    ['events', events, ['symmetric', 'no side was given', 'same stated lift']],
  ],
  warns: [
    ['readings', wheel(60, 145.5), ['at the crank']],
    ['events, 274° as on the card', { ...events, cardDuration: deg(274) }, ['at the crank']],
    // The events were read to a degree each: 2° is what they can be off.
    ['much more than on the card', { ...events, cardDuration: deg(264) }, ['°', 'at the crank']],
    ['much less', { ...events, cardDuration: deg(284) }, ['°', 'at the crank']],
  ],
});

describe('readings that can’t be', () => {
  const both = ['/before impossible-input', '/after impossible-input'];
  test.each([
    [wheel(60, 60.001), []],
    [wheel(60, 60), both],
    [wheel(60, 59), both],
    [wheel(-250, 469.999), []],
    [wheel(-250, 470), both],
    [{ opens: '270 BTDC', closes: '270 ABDC' }, []],
    [{ opens: '270.1 BTDC', closes: '270.1 ABDC' }, ['/opens impossible-input', '/closes impossible-input']],
    [{ opens: '90 ATDC', closes: '91 BBDC' }, ['/opens impossible-input', '/closes impossible-input']],
  ])('%j', (body, wanted) => {
    expect(refused(body)).toEqual(wanted);
  });
});

describe('what it costs: earlier the intake’s room, later the exhaust’s (by the order of the strokes)', () => {
  const costs = (body: object) => partOf(run(body).result, 'costs');
  test.each([
    [wheel(60, 145.5, { card: deg(103) }), 'intake'],
    [wheel(60, 145.5, { card: deg(102) }), 'exhaust'],
    [wheel(60, 145.5, { card: deg(102.75) }), 'neither'],
    [wheel(60, 145.5), undefined],
  ])('%j', (body, wanted) => {
    expect(costs(body)).toBe(wanted);
    expect(partOf(run(body).result, 'advanceAgainstCard') === undefined).toBe(wanted === undefined);
  });
});

const side = (duration: number, centreline: number) => ({
  duration: deg(duration),
  centreline: deg(centreline),
});
describe('a cam card that can’t be', () => {
  const { refused: told } = runner(camTiming);
  test.each([
    [side(720, 360), []],
    [side(720.1, 110), ['/intake/duration impossible-input']],
    [side(260, 360.1), ['/intake/centreline impossible-input']],
    [side(720.1, 360.1), ['/intake/duration impossible-input', '/intake/centreline impossible-input']],
    [{ opens: '270 BTDC', closes: '270 ABDC' }, []],
    [
      { opens: '270.1 BTDC', closes: '270.1 ABDC' },
      ['/intake/opens impossible-input', '/intake/closes impossible-input'],
    ],
  ])('%j', (intake, wanted) => {
    expect(told({ intake, exhaust: side(260, 110) })).toEqual(wanted);
  });
});

describeSaid(camTiming, {
  assumes: [
    [
      'a card',
      { intake: side(260, 110), exhaust: side(260, 110) },
      ['same stated lift', 'symmetric', 'evenly about'],
    ],
  ],
  warns: [['a card', { intake: side(260, 110), exhaust: side(260, 110) }, ['at the crank']]],
});

const stops = { stopReadings: [deg(36.75), deg(35.25)] };
describeSaid(topDeadCentre, {
  assumes: [['two contacts', stops, ['did not move', 'even about its top']]],
  warns: [['two contacts', stops, ['at the crank', 'starter']]],
});

describe('whole turns taken off: above −180° and to 180°, above −360° and to 360° (definition)', () => {
  const DEG = Math.PI / 180;
  test.each([
    [0, 0, 0],
    [180, 180, 180],
    [-180, 180, -180],
    [181, -179, 181],
    [-181, 179, -181],
    [360, 0, 360],
    [-360, 0, 360],
    [361, 1, -359],
    [540, 180, -180],
    [720, 0, 0],
    [-900, 180, -180],
  ])('%d°', (angle, turn, cycle) => {
    expect(withinHalfTurn(angle * DEG) / DEG).toBeCloseTo(turn, 9);
    expect(withinHalfCycle(angle * DEG) / DEG).toBeCloseTo(cycle, 9);
  });

  test('an angle that is within is not touched, to the last digit', () => {
    for (let angle = -3.1; angle <= 3.1; angle += 0.1) expect(withinHalfTurn(angle)).toBe(angle);
    for (let angle = -6.2; angle <= 6.2; angle += 0.1) expect(withinHalfCycle(angle)).toBe(angle);
  });
});
