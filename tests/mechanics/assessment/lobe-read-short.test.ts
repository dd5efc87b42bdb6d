import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { answering } from './answering.ts';
import { intakes, PLAIN } from './plain-build.ts';

/*
 * A lobe .020 under the others makes (arithmetic) .020 × 1.6 = .032 at the valve, which reads that low. If it was read short,
 * it makes nothing of that. Common practice, no published source.
 */
test('a lobe that was read short does not account for its valve, and one figure is said of it', () => {
  const build = { ...PLAIN, sheet: intakes({ 4: { lobe: 0.33, lift: 0.528 } }) };
  const open = assess(build);
  const text = (told: typeof open) => told.headlines.map(({ sentence }) => sentence).join('\n');
  expect(text(open)).toMatch(/accounts for it/);
  const said = `${text(open)}\n${open.stop.map(({ sentence }) => sentence).join('\n')}`;
  const figures = [...said.matchAll(/lobe [^:;]*?(\.0\d\d) in (?:low|down)|is (\.0\d\d) in down/g)];
  expect(new Set(figures.map(([, one, other]) => one ?? other)).size).toBe(1);
  const answered = assess({ ...build, answers: [answering(open.questions, 'lobe-worn', 'not-found')] });
  expect(text(answered)).not.toMatch(/accounts for it: cam/);
  expect(text(answered)).toMatch(/read short, as was answered/);
});
