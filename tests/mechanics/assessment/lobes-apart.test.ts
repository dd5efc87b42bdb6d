import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { PLAIN } from './plain-build.ts';

const DEG = Math.PI / 180;
const stop: Evidence['workings'][number] = {
  id: 'stop',
  line: 1,
  computation: 'top-dead-centre',
  timing: { of: 'stop', correction: 0, trueReading: 36 * DEG },
};
const peak = (
  line: number,
  side: 'intake' | 'exhaust',
  centreline: number,
  card: number,
): Evidence['workings'][number] => ({
  id: `peak-${line}`,
  line,
  computation: 'centreline',
  timing: {
    of: 'peak',
    side,
    fromEvents: false,
    centreline: centreline * DEG,
    card: card * DEG,
    righted: false,
  },
});
/* 102 and 110 stand 106 apart on the crank’s half, where the card has 106 and 114, 110: by hand. One cam can’t do both. */
const told = (answers: Evidence['answers'] = [], more: Evidence['workings'] = []) =>
  assess({
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'cam-timing' },
    workings: [stop, peak(2, 'intake', 102, 106), peak(3, 'exhaust', 110, 114), ...more],
    answers,
  });
const text = (said: ReturnType<typeof told>) => said.headlines.map(({ sentence }) => sentence).join(' ');

test('lobes that one cam can’t have moved so are asked first, and no advance is told before', () => {
  const open = told();
  expect(open.next?.action).toBe('lobes-apart');
  expect(text(open)).not.toMatch(/costs|gives the/);
  const question = open.questions.find(({ code }) => code === 'lobes-apart');
  const answered = (answer: string, more: Evidence['workings'] = []) =>
    told(
      [{ id: 'a', line: 9, code: 'lobes-apart', questionId: question?.id ?? '', question: '', answer }],
      more,
    );
  // That both were read right takes no reading away: it is the card.
  expect(text(answered('not-found'))).toMatch(/card is another cam’s/);
  expect(answered('not-found').next?.sentence).not.toMatch(/strike/);
  expect(answered('found').next?.sentence).toMatch(/read both lobes again/i);
  // What was answered is not asked once more.
  expect(text(answered('found'))).not.toMatch(/on one cam, one wheel and one pointer\?/);
  expect(text(answered('found'))).toMatch(
    /before both are read again with the pointer left alone, as was answered/,
  );
  // Read again and alike, it is done with; 108 late of 106 is what one cam does to 112 of 114.
  const again = answered('found', [peak(10, 'intake', 108, 106), peak(11, 'exhaust', 112, 114)]);
  expect(again.questions.map(({ code }) => code)).not.toContain('lobes-apart');
});
