import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { PLAIN, read } from './plain-build.ts';

/*
 * Sixteen valves short by the .018 of lash that was left in: lobe × 1.6 − .018, about 1.549. One read again at zero is
 * .5605 over .350, 1.601: arithmetic. That valves known to be read wrong are no measure of one that was read right is
 * common practice, no published source.
 */
const BUILD = {
  ...PLAIN,
  springs: {},
  card: { assumedRatio: 1.6, intake: { lobeLift: 0.35 * 0.0254 }, exhaust: { lobeLift: 0.36 * 0.0254 } },
};
const OFF = [0.0003, -0.0006, 0.0007, -0.0002, 0.0005, -0.0004, 0.0001, -0.0008];
const lobes = OFF.flatMap((off, at) => [
  read(at + 1, 'intake', 'lobe-lift', 0.35 + off),
  read(at + 1, 'exhaust', 'lobe-lift', 0.36 + off),
]);
const lift = (cylinder: number, valve: 'intake' | 'exhaust', short: number) => {
  const lobe = (valve === 'intake' ? 0.35 : 0.36) + (OFF[cylinder - 1] ?? 0);
  return read(cylinder, valve, 'valve-lift', Number((lobe * 1.602 - short).toFixed(4)));
};
const SHORT = OFF.flatMap((_, at) => [lift(at + 1, 'intake', 0.018), lift(at + 1, 'exhaust', 0.018)]);

const told = (sheet: readonly SheetEvidence[], answers: readonly AnswerEvidence[] = []) => {
  const { questions, headlines, next } = assess({ ...BUILD, sheet: [...lobes, ...sheet], answers });
  return {
    text: headlines.map(({ sentence }) => sentence).join('\n'),
    open: questions.filter(({ answered }) => answered === undefined).map(({ code }) => code),
    answered: questions.filter(({ answered }) => answered !== undefined).map(({ code }) => code),
    next: next?.sentence ?? '',
    questions,
  };
};

const asked = told(SHORT).questions.find(({ code }) => code === 'side-off');
const ANSWER: AnswerEvidence = {
  id: 'answer-1',
  line: 5000,
  code: 'side-off',
  questionId: asked?.id ?? '',
  question: asked?.ask ?? '',
  answer: 'set-up',
};
let line = 6000;
const again = (cylinder: number, valve: 'intake' | 'exhaust'): SheetEvidence => {
  line += 1;
  return { ...lift(cylinder, valve, 0), id: `again-${cylinder}-${valve}`, line };
};

describe('valves that were all read wrong, as was answered, and are read again one by one', () => {
  test('the one that is right is no odd one, and it is said how many are left', () => {
    expect(told([...SHORT, again(1, 'intake')], [ANSWER])).toMatchObject({
      text: expect.stringMatching(
        /^1 intake read again comes to 1\.60\d\. The other 15 were not read right, as was answered, and are still to be read again\.$/,
      ),
      open: ['lash-not-said'],
      answered: ['side-off'],
      next: 'Read the others again the same way, and strike out with the reason what was read before.',
    });
  });

  test('those that are left at the end are named', () => {
    const most = OFF.flatMap((_, at) => [
      again(at + 1, 'intake'),
      ...(at < 6 ? [again(at + 1, 'exhaust')] : []),
    ]);
    expect(told([...SHORT, ...most], [ANSWER]).text).toMatch(
      /7 exhaust and 8 exhaust were not read right, as was answered: still to be read again\./,
    );
  });

  test('all of them read again are told as any sheet is', () => {
    const all = OFF.flatMap((_, at) => [again(at + 1, 'intake'), again(at + 1, 'exhaust')]);
    expect(told([...SHORT, ...all], [ANSWER]).text).toMatch(/^No valve stands out|^No intake stands out/);
  });

  test('one that is odd among those read again is still told', () => {
    const some = OFF.slice(0, 6).map((_, at) => again(at + 1, 'intake'));
    const odd = some.map((each, at) => (at === 2 ? { ...each, reading: { value: 0.53 * 0.0254 } } : each));
    expect(told([...SHORT, ...odd], [ANSWER]).text).toMatch(/3 intake is the odd one/);
  });
});
