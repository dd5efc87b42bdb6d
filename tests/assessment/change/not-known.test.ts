import { expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';

const assess = assessAsTold('change-not-known');

const DEG = Math.PI / 180;
const LOBE = { lobeLift: 0.35 * IN };
const DURATIONS = [
  { atLift: 0.02 * IN, duration: 276 * DEG },
  { atLift: 0.05 * IN, duration: 240 * DEG },
];

/** A change of ratio with all that its gaps are calculated from; figures invented. */
const ALL: Evidence = {
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  engine: { ...PLAIN.engine, stroke: 3.48 * IN, rodLength: 5.7 * IN, valveAngle: 20 * DEG },
  card: {
    assumedRatio: 1.5,
    intake: { ...LOBE, centreline: 106 * DEG, durations: DURATIONS },
    exhaust: { ...LOBE, centreline: 112 * DEG, durations: DURATIONS },
  },
  rockers: { planned: 1.6, pivotToTip: 1.48 * IN },
  taken: {
    intake: { closedGapAtTdc: 0.4 * IN, pushrodToHead: 0.09 * IN, pistonFloor: 'pocket' },
    exhaust: { closedGapAtTdc: 0.4 * IN, pushrodToHead: 0.09 * IN, pistonFloor: 'pocket' },
  },
};

/** What the gaps of a side lack before anything is known of them. */
const lacks = (evidence: Evidence, side: string): string =>
  assess(evidence)
    .details.change.filter(({ about }) => about.of === 'side' && about.valve === side)
    .flatMap(({ gaps }) => gaps)
    .filter(({ after, measure }) => after === undefined && !measure)
    .flatMap((gap) => gap.lacks.map(({ said }) => said))
    .join(', ');

const without = (part: 'engine' | 'springs' | 'rockers', name: string): Evidence => ({
  ...ALL,
  [part]: Object.fromEntries(Object.entries(ALL[part]).filter(([key]) => key !== name)),
});
const sideWithout = (part: 'card' | 'taken', name: string): Evidence => ({
  ...ALL,
  [part]: {
    ...ALL[part],
    intake: Object.fromEntries(Object.entries(ALL[part].intake).filter(([key]) => key !== name)),
  },
});

test('with everything given nothing is lacking', () => {
  expect([lacks(ALL, 'intake'), lacks(ALL, 'exhaust')]).toEqual(['', '']);
});

test.each([
  ['stroke', without('engine', 'stroke'), /stroke/],
  ['rod', without('engine', 'rodLength'), /rod/],
  ['installed height', without('springs', 'installedHeight'), /installed height/],
  ['coil-bind height', without('springs', 'solidHeight'), /coil-bind height|solid height/],
  ['retainer to seal', without('springs', 'retainerToSeal'), /the distance with the valve shut/],
  ['pivot to tip', without('rockers', 'pivotToTip'), /pivot to tip/],
  ['centreline', sideWithout('card', 'centreline'), /centreline/],
  ['durations', sideWithout('card', 'durations'), /duration/],
  ['closed gap', sideWithout('taken', 'closedGapAtTdc'), /closed valve to piston/],
  ['piston floor', sideWithout('taken', 'pistonFloor'), /pocket or flat/],
])('%s alone left out is lacking, and nothing else', (_, evidence, named) => {
  const said = lacks(evidence, 'intake');
  for (const each of said.split(', ')) expect(each).toMatch(named);
});

test('of a pair on the card only the one that lacks is told', () => {
  const { needs } = assess(sideWithout('card', 'centreline'));
  const need = needs.find(({ what }) => what.includes('centreline'));
  expect(need).toMatchObject({ what: 'the intake centreline on the card', have: false });
});

test('without its lobe lift a side has no gaps told, and the lobe lift is what is missing', () => {
  const evidence = sideWithout('card', 'lobeLift');
  expect(lacks(evidence, 'intake')).toBe('');
  expect(assess(evidence).missing.map(({ sentence }) => sentence)).toContain(
    'The intake lobe lift on the cam card.',
  );
});
