import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { PLAIN, read } from './plain-build.ts';

const arm = (id: string) => ({ id, name: `arm ${id}`, ratioStamp: '1.6', otherNumber: '', boxLabel: '' });
const seat = (armId: string, cylinder: number) => ({ armId, cylinder, valve: 'intake' as const });

const build = (moved: Evidence['seats']): Evidence => {
  const sat = [seat('3', 3), seat('5', 5), ...moved];
  const seats = sat.filter(
    ({ armId, cylinder }, at) =>
      !sat.slice(at + 1).some((later) => later.armId === armId || later.cylinder === cylinder),
  );
  return {
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'one-valve-differs', engineState: 'apart', contact: 'none' },
    arms: [arm('3'), arm('5')],
    seats,
    sat,
    sheet: [1, 3, 5, 7].map((cylinder) =>
      read(cylinder, 'intake', 'valve-lift', cylinder === 5 ? 0.53 : 0.56),
    ),
  };
};

test('an arm that another was put in place of is asked after, until it has a place', () => {
  const half = assess(build([seat('5', 3)])).next;
  expect([half?.sentence, half?.step]).toEqual(['Say where arm 3 sits now.', 'parts']);
  const whole = assess(build([seat('5', 3), seat('3', 5)])).next;
  expect(whole?.sentence).not.toContain('Say where arm');
});
