import { describe, expect, test } from 'vitest';
import type {
  Evidence,
  PassEvidence,
  SheetEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { PLAIN, read, SET_UP } from '../plain-build.ts';
import { heard } from '../whole-sheet.ts';

const CHANGE: Evidence = {
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'choose-ratio' },
  card: { intake: {}, exhaust: {} },
  rockers: { soldAs: 1.5, planned: 1.6 },
};
const stated = (kind: PassEvidence['kind'], value: number): PassEvidence => ({
  id: kind,
  line: 5,
  standing: true,
  setUpId: SET_UP.id,
  kind,
  pass: 1,
  value: value * IN,
  counted: false,
  readAs: `${value} in`,
});

describe('lifts that nobody read', () => {
  test('stated alone they leave a headline: nothing is worked out, and what comes first', () => {
    const passes = [stated('stated-lobe-lift', 0.35), stated('stated-valve-lift', 0.525)];
    expect(heard({ ...CHANGE, setUps: [SET_UP], passes }).headlines[0]).toMatch(
      /^What the planned 1\.6 does is not worked out yet: a lobe lift of .*\.35 in and a valve lift of .*\.525 in were stated, and read by nobody\. First: the lobe lift, off the cam card or read at the lifter\.$/,
    );
  });

  test('so does a card with its valve lift alone; without any lift there is nothing to tell', () => {
    const card = { intake: { valveLift: 0.525 * IN }, exhaust: {} };
    expect(heard({ ...CHANGE, card }).headlines[0]).toMatch(
      /the card has the valve lift alone, \.525 in\. First: /,
    );
    expect(heard(CHANGE).headlines).toEqual([]);
  });
});

describe('a lower ratio, and a lobe lift at the closest point that may be that of the top', () => {
  /* By hand, lobe .350: from 1.6 to 1.5 a lift of .300 there would give .030 back; a guess may give none. Limit .080. */
  const gap = (): SheetEvidence =>
    read(1, 'intake', 'piston-to-valve', 0.07, { arms: 'before', lash: 'zero' });
  const at = (lobeLiftAtClosest: number, answers: Evidence['answers'] = []) =>
    heard({
      ...CHANGE,
      card: { assumedRatio: 1.6, intake: { lobeLift: 0.35 * IN }, exhaust: { lobeLift: 0.35 * IN } },
      rockers: { soldAs: 1.6, planned: 1.5 },
      taken: { intake: { lobeLiftAtClosest: lobeLiftAtClosest * IN }, exhaust: {} },
      sheet: [gap()],
      answers,
    }).all;
  const word = (all: ReturnType<typeof at>) =>
    all.judgements.find(({ id }) => id.startsWith('gap:piston-to-valve:1-intake'))?.word;

  test('it is not told clear by it before somebody said that it stood there', () => {
    const doubted = at(0.3);
    const question = doubted.questions.find(({ code }) => code === 'closest-near-full-lift');
    expect(question).toBeDefined();
    expect(word(doubted)).not.toBe('clear');
    const low = (all: ReturnType<typeof at>) =>
      all.details.change
        .flatMap(({ gaps }) => gaps.filter(({ name }) => name === 'piston-to-valve'))
        .find(({ after }) => after !== undefined)?.after?.low ?? 0;
    const said = at(0.3, [
      {
        id: 'a',
        line: 99,
        questionId: question?.id ?? '',
        code: 'closest-near-full-lift',
        question: '',
        answer: 'not-found',
      },
    ]);
    // Less, by what the spread of arms not measured leaves of .300 × .1.
    expect((low(said) - low(doubted)) / IN).toBeGreaterThan(0.01);
  });
});
