import { describe, expect, test } from 'vitest';
import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import type { Kept } from '../../tools/record/kept-workings.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { answer, codes, drop, saying, stop, told } from './call.ts';

const said = saying(assessAsTold('timing-calls-centrelines'));

describe('a peak that hardly any cam has', () => {
  test('125° is asked, and has no word against the card until then', () => {
    const all = said([drop(62, 188, 108)], [], { call: { ...PLAIN.call, goal: 'cam-timing' } });
    expect(codes(all)).toContain('centreline-unusual');
    expect(told(all)[0]).not.toMatch(/retarded|costs/);
    expect(told(all)[0]).toMatch(/125° is outside of the usual 95 to 120/);
  });

  test('by a card that has it so it is that cam’s', () => {
    const all = said([stop(36, 36), drop(80, 166, 124)]);
    expect(codes(all)).not.toContain('centreline-unusual');
    expect(told(all)[0]).toMatch(/level with the card, as near as a wheel is read/);
  });

  test('said to be told right, it counts', () => {
    const ask = 'Was each reading told from the right side of its dead centre, and on the right lobe?';
    const all = said(
      [drop(62, 188, 108)],
      [{ ...answer('centreline-unusual', ask, 'not-found', 9), found: false }],
    );
    expect(told(all)[0]).toMatch(/17° retarded/);
  });
});

describe('one lobe, two centrelines', () => {
  const ASK = 'Was the cam moved between these readings, or was one of them read wrong?';
  const two = [drop(62, 148, 108), drop(66, 150, 108)];

  test('105 and 108 are asked in either order, with no word', () => {
    for (const kept of [two, two.toReversed()]) {
      const all = said(kept);
      expect(codes(all)).toContain('centrelines-differ');
      expect(told(all)[0]).toMatch(/105° and 108°.*no word against the card/);
    }
  });

  test('the cam was moved: the last one counts', () => {
    const all = said(two, [{ ...answer('centrelines-differ', ASK, 'not-found', 9), found: false }]);
    expect(told(all)[0]).toMatch(/^By the wheel the intake peaks 108°/);
  });

  test('one was read wrong: what is read after that counts', () => {
    const found = { ...answer('centrelines-differ', ASK, 'found', 3), found: true };
    const open = said(two, [found]);
    expect(told(open)[0]).toMatch(/no word against the card/);
    const again = said([...two, stop(36, 36), drop(62, 148, 108)], [found]);
    expect(codes(again)).not.toContain('centrelines-differ');
    expect(told(again)[0]).toMatch(/^The intake peaks 105°/);
  });

  // One cam turns both lobes. By hand: 68 and 152 peak at 110 before TDC, 71 and 155 at 113.
  const both = [...two, drop(-152, -68, 113, 'exhaust'), drop(-155, -71, 113, 'exhaust')];
  const asks = (all: Assessment) => all.questions.filter(({ code }) => code === 'centrelines-differ');

  test('both lobes read before and after the cam was moved are asked about once', () => {
    expect(asks(said(both)).map(({ about }) => about)).toEqual([{ of: 'side', valve: 'intake' }]);
    expect(told(said(both)).filter((each) => /no word against the card/.test(each))).toHaveLength(2);
  });

  test('its answer is of the other lobe too, as far as that was read before it', () => {
    const moved = { ...answer('centrelines-differ', ASK, 'not-found', 9), found: false };
    expect(asks(said(both, [moved])).filter(({ answered }) => answered === undefined)).toEqual([]);
    expect(told(said(both, [moved])).filter((each) => /no word against the card/.test(each))).toEqual([]);
  });

  test('1° apart is the wheel', () => {
    expect(codes(said([drop(62, 148, 108), drop(63, 149, 108)]))).not.toContain('centrelines-differ');
  });
});

/*
 * By hand: an equal drop at 58 and 146 peaks at 102; opens 20 before TDC, closes 52 after BDC: (180 + 52 − 20)/2 = 106.
 * That an advance costs the intake its gap: a cam maker’s pages (trade practice 2.8).
 */
describe('one lobe, read both ways', () => {
  const ASK =
    'Was the cam moved between these two readings, is the lobe not symmetric, or was a side told wrong?';
  const events: Kept = [
    'centreline',
    { opens: '20 BTDC', closes: '52 ABDC', side: 'intake', card: '106 deg' },
  ];
  const both = [stop(36, 36), drop(58, 146, 106), events];

  test('4° apart is asked in either order, and what the earlier one costs stands', () => {
    for (const kept of [both, both.toReversed()]) {
      const all = said(kept);
      expect(codes(all)).toContain('centrelines-differ');
      expect(told(all)[0]).toMatch(/equal drop the intake peaks at 102°, by its events at 106°: 4° apart/);
      expect(told(all)[0]).toMatch(/no word against the card yet.*4° advanced.*costs intake gap/);
    }
  });

  test('a lobe that is not symmetric counts by its equal drop', () => {
    const all = said(both, [answer('centrelines-differ', ASK, 'asymmetric', 9)]);
    expect(told(all)[0]).toMatch(/^The intake peaks 102°.*4° advanced/);
  });

  test('a cam that was moved counts as it was read last', () => {
    const all = said(both, [answer('centrelines-differ', ASK, 'moved', 9)]);
    expect(told(all)[0]).toMatch(/^The intake peaks 106°.*straight up/);
  });

  test('one read wrong: the lobe is read again, and that counts', () => {
    const found = { ...answer('centrelines-differ', ASK, 'found', 4), found: true };
    expect(told(said(both, [found]))[0]).toMatch(/no word against the card/);
    const again = said([...both, stop(36, 36), drop(58, 146, 106)], [found]);
    expect(told(again)[0]).toMatch(/^The intake peaks 102°/);
  });
});

/* A pointer that was out when a lobe was read may have been left so: common practice, no published source. */
describe('a lobe read before the pointer was found out', () => {
  // (64 + 146)/2 = 105, with the pointer 1.5 out 106.5; (66 + 149)/2 = 107.5, with the stop read alike.
  const before = [drop(64, 146, 106), stop(28.5, 31.5)];
  const since = [stop(30, 30), drop(66, 149, 106)];

  test('is set against one read at a proved top dead centre as it may have been: the later one counts', () => {
    const all = said([...before, ...since]);
    expect(codes(all)).not.toContain('centrelines-differ');
    expect(told(all)[0]).toMatch(/^The intake peaks 107\.5° after TDC.*1\.5° retarded/);
  });

  test('by the way of its events as well', () => {
    const events: Kept = [
      'centreline',
      { opens: '21 deg BTDC', closes: '54 deg ABDC', card: '106 deg', side: 'intake' },
    ];
    // 255/2 − 21 = 106.5 against 105 as read.
    expect(codes(said([events, stop(28.5, 31.5), stop(30, 30), drop(66, 149, 106)]))).not.toContain(
      'centrelines-differ',
    );
  });

  test('stands apart with and without its error: it is asked', () => {
    expect(codes(said([...before, stop(30, 30), drop(69, 150, 106)]))).toContain('centrelines-differ');
    // Both read before: one pointer was left for both of them, or for none.
    expect(codes(said([drop(64, 146, 106), drop(66, 149, 106), stop(28.5, 31.5)]))).toContain(
      'centrelines-differ',
    );
  });
});

/* Events are held against the card by themselves; by hand duration/2 − the event by TDC (definition). */
describe('figures of a whole cam that stand off the card on record', () => {
  const whole = (opens: string): Kept => [
    'cam-timing',
    {
      intake: { opens, closes: '39 deg ABDC' },
      exhaust: { duration: '220 deg', centreline: '112 deg' },
    },
  ];
  const card = {
    card: { ...PLAIN.card, intake: { ...PLAIN.card.intake, centreline: (106 * Math.PI) / 180 } },
  };
  // Opens 10 after TDC, closes 39 after BDC: 209 open, 104.5 + 10 = 114.5.
  const off = whole('10 deg ATDC');

  test('are asked whether they were read, and what to do then is next', () => {
    const all = said([stop(30, 30), off], [], { ...card, call: { ...PLAIN.call, goal: 'cam-timing' } });
    const question = all.questions.find(({ code }) => code === 'whole-cam-off-card');
    expect(question?.size).toMatch(/the intake peaks 114\.5° after TDC, where the card on record has 106°/);
    expect(all.next?.action).toBe('whole-cam-off-card');
    const found = said(
      [stop(30, 30), off],
      [
        {
          ...answer('whole-cam-off-card', question?.ask ?? '', 'found', 9),
          questionId: question?.id ?? '',
          found: true,
        },
      ],
      { ...card, call: { ...PLAIN.call, goal: 'cam-timing' } },
    );
    expect(found.next?.sentence).toMatch(/keep the events of that lobe by themselves/i);
  });

  test('not where they are the card’s, nor once the events were kept by themselves', () => {
    // Opens 1 after TDC: 218 open, 109 + 1 = 110; 108 is within what is asked about.
    const near = {
      card: { ...PLAIN.card, intake: { ...PLAIN.card.intake, centreline: (108 * Math.PI) / 180 } },
    };
    expect(codes(said([whole('1 deg ATDC')], [], near))).not.toContain('whole-cam-off-card');
    const read: Kept = [
      'centreline',
      { opens: '10 deg ATDC', closes: '39 deg ABDC', card: '106 deg', side: 'intake' },
    ];
    expect(codes(said([stop(30, 30), off, read], [], card))).not.toContain('whole-cam-off-card');
    expect(codes(said([off]))).not.toContain('whole-cam-off-card');
  });
});
