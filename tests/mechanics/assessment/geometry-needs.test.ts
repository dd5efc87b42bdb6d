import { expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { ofGeometry } from '../../../server/mechanics/assessment/missing/of-geometry.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';

/* The least sweep is made of an arm, a lift and a ratio (check values 8); whichever side the ratio is planned for. */
test.each([
  ['sold as', { soldAs: 1.6 }, true],
  ['planned', { planned: 1.6 }, true],
  ['planned for the exhausts alone', { plannedExhaust: 1.6 }, true],
  ['of none', {}, false],
] as const)('with a ratio %s the least sweep is known', (_, ratio, have) => {
  const rockers: Evidence['rockers'] = { pivotToTip: 1.48 * IN, ...ratio };
  expect(ofGeometry({ ...PLAIN, rockers }).find(({ code }) => code === 'least-sweep')?.have).toBe(have);
});
