import { expect, test } from 'vitest';
import allowances from '../../../seeds/allowances.json' with { type: 'json' };
import limits from '../../../seeds/limits.json' with { type: 'json' };
import materials from '../../../seeds/materials.json' with { type: 'json' };
import setting from '../../../seeds/setting.json' with { type: 'json' };
import { allowance, USUAL_CENTRELINE } from '../../../server/mechanics/kit/allowances.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';

/* Whoever changes a figure has to see where it is from. */
test.each([
  ...Object.entries(allowances.allowances),
  ...Object.entries({ ...allowances.shares, ...allowances.counts }),
  ...Object.entries(limits.limits),
  ...Object.entries({ ...setting.lash, travel: setting.plungerTravel, slips: setting.lashSlips }),
  ...Object.entries({ feeler: setting.thinnestFeeler, aluminium: materials.aluminiumFrom }),
  ...Object.entries({ printed: materials.printedGrowth, peak: allowances.usualCentreline }),
])('%s is named, and has a source', (_, { title, source }) => {
  expect(title.length).toBeGreaterThan(10);
  expect(source.length).toBeGreaterThan(10);
});

test('angles and lengths of the table are in SI', () => {
  expect(allowance('lash-as-set')).toBeCloseTo(0.001 * IN, 12);
  expect(allowance('wheel')).toBeCloseTo(Math.PI / 180, 12);
  expect(USUAL_CENTRELINE.from).toBeCloseTo((95 * Math.PI) / 180, 12);
});
