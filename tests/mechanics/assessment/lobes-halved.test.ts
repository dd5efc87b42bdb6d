import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { stopsOf } from '../../../server/mechanics/assessment/stops-of.ts';
import { answering } from './answering.ts';
import { PLAIN, read } from './plain-build.ts';

/* A lobe .010 in down is worn (a diesel workshop manual’s wear limit, opening read). Engines and figures are invented. */
const told = (lobes: readonly number[], more: Partial<typeof PLAIN> = {}) => {
  const sheet = lobes.flatMap((lobe, at) => [
    { ...read(at + 1, 'intake', 'lobe-lift', lobe), id: `lobe-${at + 1}` },
    { ...read(at + 1, 'intake', 'valve-lift', 0.56), id: `lift-${at + 1}` },
  ]);
  const evidence = { ...PLAIN, card: { intake: {}, exhaust: {} }, sheet, ...more };
  return { ...assess(evidence), gate: stopsOf(evidence) };
};
const said = ({ stop, headlines }: ReturnType<typeof told>) =>
  [...stop, ...headlines].map(({ sentence }) => sentence).join('\n');

describe('lobes that have no middle name none of them', () => {
  test.each([
    [[0.35, 0.35, 0.37, 0.37], '.020'],
    [[0.35, 0.36, 0.37], '.020'],
  ] as const)('%j: one stop of the side, and no lobe is down or misread by name', (lobes, apart) => {
    const halved = told(lobes);
    expect(halved.stop.map(({ id }) => id)).toEqual(['stop:lobe-worn:intake']);
    expect(halved.gate).toEqual(halved.stop);
    expect(halved.stop[0]?.sentence).toBe(
      `Do not turn it: the intake lobes lie ${apart} in apart, and which of them are down can’t be told.`,
    );
    expect(halved.stop[0]?.restsOn).toHaveLength(lobes.length);
    expect(said(halved)).not.toMatch(/lobe of \d/);
  });

  test('answered, the desk may lift it; worn, it is not run', () => {
    const lobes = [0.35, 0.35, 0.37, 0.37];
    const open = told(lobes);
    const answers = [answering(open.questions, 'lobe-worn', 'found')];
    const answered = told(lobes, { answers });
    expect(answered.stop.map((each) => each.answered)).toEqual([true]);
    const [{ id, entryId } = { id: '', entryId: '' }] = answered.stop;
    const lifted = told(lobes, {
      answers,
      call: { ...PLAIN.call, stopsLifted: [{ stopId: id, ...(entryId === undefined ? {} : { entryId }) }] },
    });
    expect(lifted.stop).toEqual([]);
    expect(lifted.notToRun.map(({ sentence }) => sentence)).toContain(
      'Do not run it: some of the intake lobes are worn.',
    );
  });

  test('with a middle the one that is down is named, and nearer than the limit none is', () => {
    expect(told([0.35, 0.36, 0.362]).stop.map(({ id }) => id)).toEqual(['stop:lobe-worn:1-intake']);
    expect(told([0.35, 0.35, 0.358, 0.358]).stop).toEqual([]);
  });
});
