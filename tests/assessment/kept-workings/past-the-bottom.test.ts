import { expect } from 'vitest';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { type Call, codes, of, PRELOAD, tellEach } from './call.ts';

const LIFTED = { stopId: 'stop:plunger-bottomed:working-1', entryId: 'working-1' };

const CALLS: readonly Call[] = [
  {
    // 2 × .08125 = .1625; .1625 − .150 = .0125; × 1.6 = .020 at the valve.
    name: 'two turns into a plunger that goes .150: past its bottom, nobody turns it',
    kept: [['lifter-preload', { ...PRELOAD, turns: 2, liftersTravel: '.150 in' }]],
    check: (said) => {
      expect(said.stop).toMatchObject([
        {
          code: 'plunger-bottomed',
          answered: false,
          entryId: 'working-1',
          sentence: expect.stringMatching(/\.013 in past the plunger’s bottom.*\.020 in/),
        },
      ]);
      expect(of(said, 'adjuster')[0]).toMatch(/past the bottom.*Back off before the engine is turned/);
      expect(said.next).toMatchObject({
        turns: false,
        sentence: expect.stringMatching(/back that adjuster off/),
      });
    },
  },
  {
    // A metric screw at the cup: 3 turns of M8×1 are 3.0 mm into a plunger of 2.5 mm.
    name: 'a screw at the cup, in millimetres, runs out of travel as well',
    kept: [
      [
        'lifter-preload',
        { turns: 3, thread: 'M8×1', mount: 'cup-screw', ratio: 1.5, liftersTravel: '2.5 mm' },
      ],
    ],
    check: (said) => expect(said.stop.map(({ code }) => code)).toEqual(['plunger-bottomed']),
  },
  {
    // .08125 of .08125.
    name: 'a plunger just on its bottom has nothing left',
    kept: [['lifter-preload', { ...PRELOAD, turns: 1, liftersTravel: '.08125 in' }]],
    check: (said) => expect(said.stop[0]?.sentence).toMatch(/on its bottom.*nothing left/),
  },
  {
    name: 'kept again with fewer turns, and nobody said whether it had been turned so far: the stop stays',
    kept: [
      ['lifter-preload', { ...PRELOAD, turns: 2, liftersTravel: '.150 in' }],
      ['lifter-preload', { ...PRELOAD, turns: 0.5, liftersTravel: '.150 in' }],
    ],
    check: (said) => {
      expect(said.stop).toMatchObject([{ entryId: 'working-1', answered: false }]);
      expect(codes(said)).toContain('plunger-bottomed');
      // .040625; .150 less that.
      expect(of(said, 'adjuster')).toEqual([
        'These turns press the plunger .041 in, within the usual .020 to .060 in; .109 in of its travel is left. How zero was found was not said.',
      ]);
    },
  },
  {
    name: 'lifted, and not answered: lifting does nothing',
    base: { call: { ...PLAIN.call, stopsLifted: [LIFTED] } },
    kept: [
      ['lifter-preload', { ...PRELOAD, turns: 2, liftersTravel: '.150 in' }],
      ['lifter-preload', { ...PRELOAD, turns: 0.5, liftersTravel: '.150 in' }],
    ],
    check: (said) => expect(said.stop).toHaveLength(1),
  },
  {
    name: 'answered, lifted by a person, and kept again: the stop and its question are gone',
    base: { call: { ...PLAIN.call, stopsLifted: [LIFTED] } },
    answers: [
      {
        id: 'answer',
        line: 9,
        code: 'plunger-bottomed',
        questionId:
          'question:plunger-bottomed:build:working-1:was-the-adjuster-really-turned-that-far-or-was-it-only-worked-out',
        question: '',
        answer: 'found',
        found: true,
      },
    ],
    kept: [
      ['lifter-preload', { ...PRELOAD, turns: 2, liftersTravel: '.150 in' }],
      ['lifter-preload', { ...PRELOAD, turns: 0.5, liftersTravel: '.150 in' }],
    ],
    check: (said) => {
      expect(said.stop).toEqual([]);
      expect(codes(said)).not.toContain('plunger-bottomed');
    },
  },
  {
    name: 'two sums past the bottom are two stops, each with its question',
    kept: [
      ['lifter-preload', { ...PRELOAD, turns: 2, liftersTravel: '.150 in' }],
      ['lifter-preload', { ...PRELOAD, turns: 2.5, liftersTravel: '.150 in' }],
    ],
    check: (said) => {
      expect(said.stop.map(({ entryId }) => entryId)).toEqual(['working-1', 'working-2']);
      expect(codes(said).filter((code) => code === 'plunger-bottomed')).toHaveLength(2);
    },
  },
  {
    // 2 × .08125 = .1625, where .120 to .150 is a net-build plunger’s whole travel: trade press.
    name: 'two turns and no travel said: past what plungers usually go, nobody turns it before its maker was asked',
    kept: [['lifter-preload', { ...PRELOAD, turns: 2 }]],
    check: (said) => {
      expect(said.stop[0]?.sentence).toMatch(/press the plunger \.163 in, further than plungers usually go/);
      expect(said.stop[0]?.wayOut).toMatch(/^Ask the lifter’s maker how far its plunger goes/);
      const [question] = said.questions.filter(({ code }) => code === 'plunger-bottomed');
      expect(question?.size).toMatch(/no further than \.150 in, and these turns press it \.163 in/);
      expect(question?.answers.map(({ code }) => code)).toEqual(['found', 'not-found', 'makers-figure']);
      expect(codes(said)).not.toContain('sum-unlikely');
    },
  },
  {
    name: 'its maker was asked, and the stop lifted: nothing is asked of it any more',
    base: { call: { ...PLAIN.call, stopsLifted: [LIFTED] } },
    answers: [
      {
        id: 'answer',
        line: 9,
        code: 'plunger-bottomed',
        questionId:
          'question:plunger-bottomed:build:working-1:was-the-adjuster-really-turned-that-far-or-was-it-only-worked-out',
        question: '',
        answer: 'makers-figure',
      },
    ],
    kept: [['lifter-preload', { ...PRELOAD, turns: 2 }]],
    check: (said) => {
      expect(said.stop).toEqual([]);
      expect(said.next?.action).not.toBe('plunger-bottomed');
    },
  },
  {
    // 1.8 × .08125 = .146: the most that is usual is not passed.
    name: 'not past what is usual, it stops nothing',
    kept: [['lifter-preload', { ...PRELOAD, turns: 1.8 }]],
    check: (said) => expect(said.stop).toEqual([]),
  },
  {
    // 2 × .08125 = .1625 of .200 in: the maker’s figure goes first, whichever was kept first.
    name: 'its maker lets the plunger go further: nothing stops it',
    kept: [
      ['lifter-preload', { ...PRELOAD, turns: 2 }],
      ['lifter-preload', { ...PRELOAD, turns: 2, liftersTravel: '.200 in' }],
    ],
    check: (said) => expect(said.stop).toEqual([]),
  },
];

tellEach(CALLS, assessAsTold('kept-workings-past-the-bottom'));
