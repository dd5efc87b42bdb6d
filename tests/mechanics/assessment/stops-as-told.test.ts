import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { stopsOf } from '../../../server/mechanics/assessment/stops-of.ts';
import { answering } from './answering.ts';
import { line, log } from './lash-log.ts';

/* .300 in is no lash that anybody sets (common practice, no published source): a dot one place off. */
test('a slip that was answered and entered again raises no stop, neither told nor at the gate', () => {
  const before = [
    line(1, '2026-01-10', 0.02, { moment: 'set' }),
    line(2, '2026-02-10', 0.03),
    line(3, '2026-02-10', 0.02, { moment: 'set' }),
    line(4, '2026-03-10', 0.3),
  ];
  const answers = [answering(assess(log(before)).questions, 'lash-unlikely', 'found', 5)];
  const evidence = { ...log([...before, line(6, '2026-03-10', 0.02)]), answers };
  expect(assess(evidence).stop).toEqual([]);
  expect(stopsOf(evidence)).toEqual([]);
});

test('a stop that stands is raised for both', () => {
  const evidence = log([
    line(1, '2026-01-10', 0.02, { moment: 'set' }),
    line(2, '2026-02-10', 0.03),
    line(3, '2026-02-10', 0.02, { moment: 'set' }),
    line(4, '2026-03-10', 0.035),
  ]);
  expect(assess(evidence).stop.map(({ code }) => code)).toEqual(['lash-grew-again']);
  expect(stopsOf(evidence)).toEqual(assess(evidence).stop);
});
