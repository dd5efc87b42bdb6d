import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { lashPart } from '../../../server/mechanics/assessment/lash/lash.ts';
import { ofAdjuster } from '../../../server/mechanics/assessment/missing/of-adjuster.ts';
import { scanOf } from './piston-scan.ts';
import { intakes, PLAIN } from './plain-build.ts';

/* What is still to be done once the desk has lifted a stop: common practice, no published source. */

const said = (code: string, answer: string, more: Partial<AnswerEvidence> = {}): AnswerEvidence => ({
  id: `answer-${code}-${answer}`,
  line: 90,
  code,
  question: code,
  answer,
  ...more,
});

const codesOf = ({ questions }: ReturnType<typeof assess>) => questions.map(({ code }) => code);

/** The same with every stop lifted, on the entry that raised it. */
function lifted(evidence: Evidence): Evidence {
  const stopsLifted = assess(evidence).stop.map(({ id, entryId }) => ({
    stopId: id,
    ...(entryId === undefined ? {} : { entryId }),
  }));
  return { ...evidence, call: { ...evidence.call, stopsLifted } };
}

function answered(evidence: Evidence, code: string, answer: string, found?: boolean): Evidence {
  const question = assess(evidence).questions.find((each) => each.code === code);
  if (question === undefined) throw new Error(`${code} is not asked`);
  const entry = said(code, answer, {
    questionId: question.id,
    question: question.ask,
    ...(found === undefined ? {} : { found }),
  });
  return { ...evidence, answers: [...evidence.answers, entry] };
}

describe('a lobe that was found worn', () => {
  const worn = answered(
    { ...PLAIN, sheet: intakes({ 2: { lobe: 0.338, lift: 0.541 } }) },
    'lobe-worn',
    'found',
    true,
  );

  test('is not read again once its stop is lifted, and is not run on', () => {
    const told = assess(lifted(worn));
    expect(told.stop).toEqual([]);
    expect(told.next?.action).not.toBe('lobe-worn');
    expect(told.next?.sentence).not.toMatch(/enter that reading again/);
    expect(told.notToRun).toContainEqual(
      expect.objectContaining({
        id: 'not-to-run:lobe-worn:2-intake',
        sentence: 'Do not run it: the lobe of 2 intake is worn.',
      }),
    );
  });
});

describe('a part that came off', () => {
  const noise: Evidence = {
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'noise-or-failure', engineState: 'has-run' },
  };
  const signs = said('noise-signs', 'none');

  test.each([
    ['a nut that is off', said('noise-nut', 'off')],
    ['a stud that moves', said('noise-stud', 'moves')],
    ['a pin that crept', said('noise-roller', 'pin-moved')],
  ])('%s: no gap is asked for as it was found', (_, answer) => {
    const told = assess(lifted({ ...noise, answers: [signs, answer] }));
    const asked = [told.next?.sentence, ...told.details.noise.checks.map(({ sentence }) => sentence)].join(
      '\n',
    );
    expect(told.stop).toEqual([]);
    expect(asked).not.toMatch(/\bas found/);
    const [lash] = ofAdjuster(noise, told.details.noise, lashPart(noise).work).filter(
      ({ code }) => code === 'lash',
    );
    expect(lash?.ask).toMatch(
      /^The gap as it was found is gone with that part\. Once it is changed set the lash/,
    );
    // Nobody has said which of the two is so.
    expect(codesOf(told)).toContain('contact-told-otherwise');
  });

  test('with nothing off the gap is still read as found', () => {
    const told = assess({ ...noise, answers: [signs, said('noise-nut', 'held')] });
    expect(told.details.noise.checks.map(({ sentence }) => sentence).join('\n')).toMatch(/as found/);
  });
});

describe('a scan that was short, and read again', () => {
  /** Against .080 in on a street intake: a usual figure of the trade press. */
  const scan = (id: string, least: number, line: number) => scanOf(id, least, { line });
  const call = { ...PLAIN.call, goal: 'clearances-after-a-change' as const };
  const engine = { ...PLAIN.engine, use: 'street' as const };
  const free = lifted(
    answered({ ...PLAIN, call, engine, scans: [scan('one', 0.07, 100)] }, 'gap-short', 'read-again'),
  );
  const twice: Evidence = { ...free, scans: [scan('one', 0.07, 100), scan('two', 0.092, 110)] };

  test('is read again first', () => {
    expect(assess(free).next?.action).toBe('read-gap-again');
  });

  test('is then asked what was changed between, not to be read once more', () => {
    const { next, questions } = assess(twice);
    expect(next).toMatchObject({ action: 'scans-apart', turns: false });
    expect(questions.find(({ code }) => code === 'scans-apart')?.weight).toBe('strong');
  });

  test('changed: the old scan is struck out; not changed: it is read once more', () => {
    expect(assess(answered(twice, 'scans-apart', 'changed')).next?.action).toBe('strike-old-scan');
    expect(assess(answered(twice, 'scans-apart', 'not-changed')).next?.action).toBe('read-gap-again');
  });
});
