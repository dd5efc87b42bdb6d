import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { stationSaid } from '../../../server/mechanics/assessment/ratio/told/ratio-said.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { speaking } from '../../../shared/quantities/spoken-units.ts';
import { answered, armOf, heard, setUpOn, together, VERIFY } from './whole-sheet.ts';

const ARM = armOf('A1');
/** A call about one arm on 1 intake, stamped 1.6, lobes .350 on the card. */
const BUILD: Evidence = {
  ...VERIFY,
  card: { assumedRatio: 1.6, intake: { lobeLift: 0.35 * IN, valveLift: 0.56 * IN }, exhaust: {} },
  arms: [ARM],
  seats: [{ cylinder: 1, valve: 'intake', armId: ARM.id }],
};
const read = (lifts: readonly number[], more: Parameters<typeof setUpOn>[3] = {}) =>
  setUpOn(1, ARM.id, lifts, more);

/** An answer to the question of that word, as it is asked of that set-up. */
function answerOfSetUp(evidence: Evidence, code: string, answer: string, found?: boolean): Evidence {
  const question = heard(evidence).all.questions.find((each) => each.code === code);
  if (question === undefined || question.about.of !== 'set-up') throw new Error(`${code} is not asked`);
  const { setUpId } = question.about;
  return {
    ...evidence,
    answers: [
      ...evidence.answers,
      {
        id: `answer-${code}`,
        line: 9_000,
        questionId: question.id,
        code,
        question: question.ask,
        answer,
        setUpId,
        ...(found === undefined ? {} : { found }),
      },
    ],
  };
}

test('the station that is said is the one that is entered: 5 mm of a metric dial, .200 in of an inch one', () => {
  expect(speaking('metric', stationSaid)).toBe('5 mm');
  expect(speaking('inch', stationSaid)).toBe('.200 in');
});

describe('the card was misread, or is another cam’s', () => {
  const low = (): Evidence => {
    const own = read([0.541, 0.541, 0.541]);
    return {
      ...BUILD,
      ...own,
      passes: own.passes.map((pass) =>
        pass.kind === 'lobe-lift' ? { ...pass, value: 0.338 * IN, readAs: '.338 in' } : pass,
      ),
    };
  };

  test('a slip of the card: the card is put right, the passes stay, and nothing is worn', () => {
    const said = heard(answered(low(), 'slip', 'found'));
    expect(said.sentence).toBe('1 intake: put the lobe lift of the card right.');
    // .541 / .338 = 1.601, both read on the engine.
    expect(said.headlines[0]).toContain('1.601');
    expect(said.headlines.join(' ')).not.toContain('entered again');
    expect(said.headlines.join(' ')).not.toContain('or wear?');
    expect(said.all.notToRun).toEqual([]);
  });

  test('another cam’s card: the same, the ratio takes nothing from it', () => {
    const said = heard(answered(low(), 'card-not-this-lobe', 'found'));
    expect(said.headlines[0]).toContain('1.601');
    expect(said.headlines.join(' ')).not.toContain('or wear?');
    expect(said.sentence).toBe('1 intake: put the lobe lift of the card right.');
  });
});

describe('a turn that would make it is settled by one more pass, not by a second dial', () => {
  test('uncounted: .482 where .582 is 4 % over', () => {
    const said = heard({ ...BUILD, ...read([0.482, 0.482, 0.481], { counted: false }) });
    expect(said.asks).toContain('turn-miscounted');
    expect(said.next).toBe('one-more-pass');
  });

  test('counted: once more, and after that something else', () => {
    expect(heard({ ...BUILD, ...read([0.482, 0.482, 0.481]) }).next).toBe('one-more-pass');
    expect(heard({ ...BUILD, ...read([0.482, 0.482, 0.481, 0.482]) }).next).not.toBe('one-more-pass');
  });

  test('an answer is told in the words that it was given in', () => {
    const asked: Evidence = { ...BUILD, ...read([0.482, 0.482, 0.481]) };
    const said = heard(answerOfSetUp(asked, 'count-does-not-fit', 'found', true));
    const all = [...said.headlines, said.sentence].join(' ');
    expect(all).toContain('the answer was “No, or it stood elsewhere”');
    expect(all).not.toContain('the answer was yes');
  });
});

describe('set-ups that differ', () => {
  const two = () => together(read([0.56, 0.56, 0.56]), read([0.535, 0.535, 0.535]));

  test('one more that agrees with the first settles it, though now the one and now the other came up', () => {
    const both = answered({ ...BUILD, ...two() }, 'set-ups-differ', 'both');
    const said = heard({ ...both, ...together(both, read([0.56, 0.5605, 0.56])) });
    expect(said.headlines[0]).toContain('agrees with the 1.6');
    expect(said.headlines[0]).not.toContain('First');
  });

  test('where a person said that the other holds, those that agree are one answer, and nobody sets up again', () => {
    const own = two();
    const [, second] = own.setUps;
    const other = answered({ ...BUILD, ...own }, 'set-ups-differ', `set-up-${second?.number ?? 0}`);
    const said = heard({ ...other, ...together(other, read([0.56, 0.5605, 0.56])) });
    expect(said.sentence).toContain('come to the same: say that they hold');
    const question = said.all.questions.find(
      ({ code, answered: given }) => code === 'set-ups-differ' && given === undefined,
    );
    expect(question?.answers.map(({ label }) => label).join()).toMatch(/Set-ups \d+ and \d+ hold/);
  });

  test('whether the zero moved is not asked where every pass came back to it', () => {
    expect(heard({ ...BUILD, ...two() }).asks).not.toContain('zero-moved');
  });

  test('struck out passes of a second set-up are not wanted again', () => {
    const own = two();
    const [, second] = own.setUps;
    const passes = own.passes.map((pass) =>
      pass.setUpId === second?.id && pass.kind === 'valve-lift' ? { ...pass, standing: false } : pass,
    );
    expect(heard({ ...BUILD, ...own, passes }).sentence).not.toContain('Read the valve lift of 1 intake');
  });
});

test('a zero that was looked at and had not moved: the pass counts', () => {
  const own = read([0.56, 0.56, 0.56]);
  const off: Evidence = {
    ...BUILD,
    ...own,
    passes: own.passes.map((pass) =>
      pass.kind === 'valve-lift' && pass.pass === 1 ? { ...pass, zeroReturn: 0.004 * IN } : pass,
    ),
  };
  expect(heard(off).headlines[0]).toContain('First: pass 1 entered again');
  const looked = heard(answerOfSetUp(off, 'zero-not-returned', 'not-found', false));
  expect(looked.headlines[0]).toContain('agrees with the 1.6');
  const found = heard(answerOfSetUp(off, 'zero-not-returned', 'found', true));
  expect(found.headlines[0]).toContain('First: pass 1 entered again');
});

describe('one slip is asked about once', () => {
  test('a hand read backwards that fits to the figure stands for a turn that fits badly', () => {
    // 5 turns and 40 for 5 and 60 on a .100 dial: .540, and .560 is the card’s.
    const asks = heard({ ...BUILD, ...read([0.54, 0.54, 0.54], { counted: false }) }).all.questions;
    expect(
      asks.filter(({ code, weight }) => code === 'hand-read-backwards' && weight === 'strong'),
    ).toHaveLength(1);
    expect(asks.filter(({ code }) => code === 'turn-miscounted')).toEqual([]);
  });

  test('lash that would make it just is asked in place of how the lash was', () => {
    const card = { ...BUILD.card, intake: { ...BUILD.card.intake, lash: 0.016 * IN } };
    const { asks } = heard({ ...BUILD, card, ...read([0.544, 0.544, 0.544], { lash: 'not-said' }) });
    expect(asks.filter((code) => code === 'lash-not-said' || code === 'lash-left-in')).toHaveLength(1);
  });

  test('passes that sink are no slip of a digit', () => {
    const { asks } = heard({
      ...BUILD,
      engine: { ...BUILD.engine, lifter: 'hydraulic-roller' },
      ...read([0.548, 0.541, 0.533], { lifter: 'hydraulic' }),
    });
    expect(asks).toContain('falling-passes');
    expect(asks).not.toContain('slip');
  });
});

test('what it is sold as is told once beside the stamp', () => {
  const arm = { ...ARM, ratioStamp: '1.65' };
  const said = heard({ ...BUILD, arms: [arm], rockers: { soldAs: 1.6 }, ...read([0.56, 0.56, 0.56]) });
  const first = said.headlines[0] ?? '';
  expect(first).toContain('which was ordered?');
  expect(first.split('sold as')).toHaveLength(2);
});

test('a lobe pass among those of the valve: where the indicator stood is asked before anything is read', () => {
  const own = read([0.35, 0.56, 0.56]);
  const passes = own.passes.filter(({ kind }) => kind === 'valve-lift');
  const said = heard({ ...BUILD, setUps: own.setUps, passes });
  expect(said.asks).toContain('pass-of-other-lift');
  expect(said.next).toBe('pass-of-other-lift');
});

test('an arm on an intake, and nothing read yet: only the intake lobe of the card is wanted', () => {
  const card = { assumedRatio: 1.6, intake: { lobeLift: 0.35 * IN }, exhaust: {} };
  expect(heard({ ...BUILD, card }).sentence).not.toContain('exhaust');
  const { intake: exhaust } = card;
  expect(heard({ ...BUILD, card: { ...card, intake: {}, exhaust } }).sentence).toContain('intake lobe lift');
});
