import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN, LBF, LBF_PER_IN } from '../../../server/mechanics/kit/si.ts';
import { asOneSpring, goesSolidFirst, type Nest } from '../../../server/mechanics/springs/nested.ts';
import { lobe, nothingKnown } from '../../mechanics/assessment/plain.ts';
import { read } from '../../mechanics/assessment/plain-build.ts';
import { facesOf, linesOf } from '../../tools/call-faces.ts';
import { asWritten } from '../../tools/page-text.ts';
import { callOf, recordOf } from '../../tools/record-of-evidence.ts';

/*
 * Two springs on one valve, each by itself (trade practice 2.9): .361 × 1.65 − .016 = .580 net; the outer has 1.850 − .580
 * − 1.130 = .140 left, the inner 1.750 − .580 − 1.120 = .050. The springs and the engine are invented.
 */
const NEST: Nest = {
  outer: {
    installedHeight: 1.85 * IN,
    solidHeight: 1.13 * IN,
    seatLoad: 140 * LBF,
    rate: 300 * LBF_PER_IN,
  },
  inner: { installedHeight: 1.75 * IN, solidHeight: 1.12 * IN, seatLoad: 60 * LBF, rate: 150 * LBF_PER_IN },
};

const withNest = (nest: Nest, more: Partial<Evidence> = {}): Evidence => ({
  ...nothingKnown,
  call: { ...nothingKnown.call, goal: 'choose-ratio' },
  engine: { cylinders: 8, lifter: 'solid-roller', mounting: 'stud', studSize: '7/16' },
  card: { assumedRatio: 1.5, intake: lobe(0.361, { lash: 0.016 }), exhaust: {} },
  springs: { ...asOneSpring(nest), nest, retainerToSeal: 0.74 * IN },
  rockers: { soldAs: 1.5, planned: 1.65 },
  ...more,
});

const bindOf = (evidence: Evidence) =>
  assess(evidence).details.change[0]?.gaps.find(({ name }) => name === 'coil-bind');

describe('the inner spring goes solid first', () => {
  const evidence = withNest(NEST);

  test('it is named in the answer and in what is told of the gap', () => {
    const { headlines, judgements } = assess(evidence);
    expect(headlines[0]?.sentence).toMatch(
      /room to coil bind of the inner spring on the intake valves: close, \.050 in/,
    );
    expect(judgements.find(({ id }) => id === 'gap:coil-bind:intake')?.sentence).toMatch(
      /^Room to coil bind of the inner spring, intake valves/,
    );
  });

  test('the drawing has the room that the table has, on either side', () => {
    for (const { name, html } of facesOf(recordOf(evidence), callOf(evidence).id)) {
      const text = linesOf(html).join(' ');
      if (!name.endsWith('/consequences')) continue;
      expect(text, name).toMatch(/Room to coil bind of the inner spring, full lift \.050/);
      expect(html, name).toContain('.050 in is left before coil bind');
      expect(html, name).not.toContain('.140 in is left');
    }
  });

  test('what was read stands in the drawing too', () => {
    const bound = withNest(NEST, {
      rockers: { soldAs: 1.65 },
      sheet: [read(1, 'intake', 'coil-bind', 0.071)],
    });
    const desk = facesOf(recordOf(bound), callOf(bound).id).find(({ name }) => name === 'desk/consequences');
    expect(asWritten(desk?.html ?? '')).toContain('.071 in is left before coil bind');
  });
});

describe('what one of the two lacks is asked for by its name', () => {
  const { installedHeight: _, solidHeight: __, ...inner } = NEST.inner;

  test('coil-bind height of the inner; it stands at the outer’s height where its own is not said', () => {
    const bare = withNest({ ...NEST, inner });
    expect(bindOf(bare)?.lacks.map(({ said }) => said)).toEqual(['coil-bind height of the inner spring']);
    expect(assess(bare).missing.map(({ sentence }) => sentence)).toContain(
      'The coil-bind height of the inner spring.',
    );
  });

  test('seat load and rate of the inner', () => {
    const { seatLoad: ___, rate: ____, ...heights } = NEST.inner;
    const load = assess(withNest({ ...NEST, inner: heights })).details.change[0]?.figures.find(
      ({ name }) => name === 'open-load',
    );
    expect(load?.lacks).toEqual(['seat load of the inner spring', 'spring rate of the inner spring']);
  });
});

test('room is height less coil-bind height: .720 outer and .630 inner; at .720 both go solid together', () => {
  expect(goesSolidFirst(NEST)).toBe('inner');
  expect(goesSolidFirst({ ...NEST, inner: { installedHeight: 1.84 * IN, solidHeight: 1.12 * IN } })).toBe(
    'both',
  );
  expect(goesSolidFirst({ ...NEST, inner: { installedHeight: 1.9 * IN, solidHeight: 1.12 * IN } })).toBe(
    'outer',
  );
  expect(goesSolidFirst({ ...NEST, inner: { rate: 150 * LBF_PER_IN } })).toBeUndefined();
});

test('heights by which the inner binds already are asked of the inner', () => {
  // .361 × 1.5 − .016 = .5255: 1.640 − .5255 − 1.120 = −.0055.
  const binds = withNest({ ...NEST, inner: { ...NEST.inner, installedHeight: 1.64 * IN } });
  const question = assess(binds).questions.find(({ code }) => code === 'springs-bind-already');
  expect(question?.ask).toMatch(/of the inner springs read right/);
  expect(question?.size).toMatch(/^Installed 1\.640 in, coil-bind 1\.120 in/);
});
