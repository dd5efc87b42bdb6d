import { expect } from 'vitest';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { type Call, codes, of, PRELOAD, tellEach } from './call.ts';

const CALLS: readonly Call[] = [
  {
    name: 'over the usual, travel not said, zero found by spinning',
    kept: [['lifter-preload', { ...PRELOAD, turns: 1, zeroFoundBy: 'spin' }]],
    check: (said) => {
      expect(said.stop).toEqual([]);
      expect(of(said, 'adjuster')[0]).toMatch(
        /\.081 in, over the usual \.020 to \.060 in\. Zero was found by spinning/,
      );
    },
  },
  {
    // .75 × .08125 = .0609; × 1.6 = .0975 at the valve.
    name: 'a preload on solid lifters holds the valve open: nobody turns it',
    base: { engine: { ...PLAIN.engine, lifter: 'solid-flat' } },
    kept: [['lifter-preload', { ...PRELOAD, turns: 0.75 }]],
    check: (said) => {
      expect(said.stop[0]?.sentence).toMatch(/solid lifters.*hold the valve open by up to \.098 in/);
      expect(of(said, 'adjuster')[0]).toMatch(/no plunger to press/);
    },
  },
  {
    name: 'a thousandth over the usual .060 is over it: asked, whatever a turn is counted to',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' } },
    kept: [['lifter-preload', { ...PRELOAD, turns: 0.75 }]],
    check: (said) => {
      expect(said.stop).toEqual([]);
      expect(of(said, 'adjuster')).toEqual([
        'These turns press the plunger .061 in, just over the usual .020 to .060 in. How zero was found was not said.',
      ]);
      expect(codes(said)).toContain('preload-over');
    },
  },
  {
    // .125 × .08125 = .0102, under .020 by more than a sixteenth of a turn; .020 ÷ .08125 = .246 turn.
    name: 'an eighth of a turn is under the usual: asked, and turned on to it',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' } },
    kept: [['lifter-preload', { ...PRELOAD, turns: 0.125 }]],
    check: (said) => {
      const question = said.questions.find(({ code }) => code === 'preload-under');
      expect(question?.weight).toBe('strong');
      expect(question?.test).toMatch(
        /find zero lash again.*turn on to the band: \.020 in is \.246 turn from zero/,
      );
    },
  },
  {
    // 1.25 × .08125 = .1016; to the middle of .020 to .060 it is .0616 too much: ÷ (1 + 1/1.6) = .0379 at the pivot.
    name: 'a pedestal’s bolt goes to its stop: a shim under it or a shorter pushrod takes preload off',
    base: { engine: { ...PLAIN.engine, mounting: 'pedestal', lifter: 'hydraulic-roller' } },
    kept: [['lifter-preload', { ...PRELOAD, turns: 1.25 }]],
    check: (said) => {
      const question = said.questions.find(({ code }) => code === 'preload-over');
      expect(question?.test).toMatch(
        /a shim of about \.038 in under the pedestal or take a pushrod about \.062 in shorter/,
      );
      expect(question?.test).not.toMatch(/find zero lash/);
    },
  },
  {
    // 2 × .08125 = .1625.
    name: 'two turns without the travel of the plunger: stopped as the sum of a preload is',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [['adjuster', { ...PRELOAD, lifter: 'hydraulic', turns: 2 }]],
    check: (said) => {
      expect(said.stop).toMatchObject([{ code: 'plunger-bottomed', entryId: 'working-1', answered: false }]);
      expect(said.stop[0]?.sentence).toMatch(/press the plunger \.163 in, further than plungers usually go/);
      const [question, ...more] = said.questions.filter(({ code }) => code === 'plunger-bottomed');
      expect(more).toEqual([]);
      expect(question?.answers.map(({ code }) => code)).toEqual(['found', 'not-found', 'makers-figure']);
      expect(codes(said)).not.toContain('sum-unlikely');
      expect(codes(said)).not.toContain('preload-over');
      expect(said.details.workings.turnToMake).toBeUndefined();
    },
  },
  {
    // 1.5 × .08125 = .121875.
    name: 'one and a half without the travel: too far, and no order',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [['adjuster', { ...PRELOAD, lifter: 'hydraulic', turns: 1.5 }]],
    check: (said) => {
      // .020 ÷ .08125 = .25, .060 ÷ .08125 = .74 turn.
      expect(of(said, 'adjuster')).toEqual([
        '1.5 turns past zero lash press the plunger .122 in: too far. The usual is .020 to .060 in, about .25 to .74 turn. How zero was found was not said.',
      ]);
      expect(codes(said)).toContain('preload-over');
      expect(said.details.workings.turnToMake).toBeUndefined();
    },
  },
  {
    // .75 × .08125 = .0609.
    name: 'the same as turns to make: no order before it is asked',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [['adjuster', { ...PRELOAD, lifter: 'hydraulic', turns: 0.75 }]],
    check: (said) => {
      expect(of(said, 'adjuster')).toEqual([
        '.75 turn past zero lash presses the plunger .061 in: just over the usual .020 to .060 in, about .25 to .74 turn. How zero was found was not said.',
      ]);
      expect(codes(said)).toContain('preload-over');
      expect(said.details.workings.turnToMake).toBeUndefined();
    },
  },
  {
    // .7 × .08125 = .0569, a sixteenth of a turn, .005, under the top: within, and told.
    name: 'under the top of the usual it is a turn to make',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [['adjuster', { ...PRELOAD, lifter: 'hydraulic', turns: 0.7 }]],
    check: (said) => {
      expect(of(said, 'adjuster')[0]).toMatch(
        /^Tighten \.7 turn.*presses the plunger \.057 in, about at the top of the usual/,
      );
      expect(codes(said)).not.toContain('preload-over');
    },
  },
  {
    // The maker’s .010 to .040 was told with the preload: half a turn, .0406, is over it for every sum.
    name: 'the maker’s band holds for the turns as well, and its travel is not asked for again',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [
      [
        'lifter-preload',
        { ...PRELOAD, turns: 0.25, liftersTravel: '.150 in', wanted: { from: '.010 in', to: '.040 in' } },
      ],
      ['adjuster', { ...PRELOAD, lifter: 'hydraulic', turns: 0.5 }],
    ],
    check: (said) => {
      const asked = said.questions.filter(({ code }) => code === 'preload-over');
      expect(asked.map(({ ask }) => ask)).toEqual([
        'Are these turns meant to go over the band that is wanted?',
      ]);
      expect(asked[0]?.size).toMatch(/\.010 to \.040 in is wanted\. It goes \.150 in/);
      expect(asked[0]?.test).not.toMatch(/how far its plunger goes/);
      expect(of(said, 'adjuster').join(' ')).not.toContain('Tighten');
    },
  },
  {
    // 2 × .08125 = .1625 of .200 that was told with another sum: no doubt how far it goes, and over the usual.
    name: 'travel that was told once is not asked of the next sum',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [
      ['lifter-preload', { ...PRELOAD, turns: 0.5, liftersTravel: '.200 in' }],
      ['lifter-preload', { ...PRELOAD, turns: 2 }],
    ],
    check: (said) => {
      expect(codes(said)).not.toContain('sum-unlikely');
      expect(of(said, 'adjuster')).toEqual([
        'These turns press the plunger .163 in, over the usual .020 to .060 in; .038 in of its travel is left. How zero was found was not said.',
      ]);
    },
  },
  {
    name: 'asked for by the lifter’s maker it is a turn to make',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [['adjuster', { ...PRELOAD, lifter: 'hydraulic', turns: 1.5 }]],
    answers: [
      {
        id: 'maker',
        line: 9,
        code: 'preload-over',
        question: 'Does the lifter’s maker ask for that much preload?',
        answer: 'not-found',
        found: false,
      },
    ],
    check: (said) => {
      expect(of(said, 'adjuster')[0]).toMatch(/^Tighten 1\.5 turns, 540°.*as its maker asks/);
      expect(said.details.workings.turnToMake).toBe('working-1');
    },
  },
  {
    // 1.25 × .08125 = .1016: too far, whichever sum it was kept by; zero by spinning is looked for first.
    name: 'a preload over the usual asks for zero again, before anything is said',
    base: {
      call: { ...PLAIN.call, goal: 'adjuster' },
      engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' },
    },
    kept: [['adjuster', { ...PRELOAD, lifter: 'hydraulic', turns: 1.25, zeroFoundBy: 'spin' }]],
    check: (said) => {
      expect(said.next).toMatchObject({
        action: 'preload-over',
        sentence: expect.stringMatching(/find zero lash again by up-and-down play/),
      });
      expect(of(said, 'adjuster').join(' ')).not.toContain('Tighten');
    },
  },
  {
    // −.5 × .08125 = .0406 at the pushrod; × 1.6 = .065 at the valve.
    name: 'backed off from zero lash a plunger does not follow: a gap opens',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [['adjuster', { ...PRELOAD, lifter: 'hydraulic', turns: -0.5 }]],
    check: (said) =>
      expect(of(said, 'adjuster')[0]).toMatch(
        /opens a gap of \.041 in at the pushrod, \.065 in at the valve/,
      ),
  },
  {
    name: 'hydraulic lifters have no lash to read: bled down, zero, then the turns',
    base: {
      call: { ...PLAIN.call, goal: 'adjuster' },
      engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' },
    },
    kept: [],
    check: (said) => {
      expect(said.missing.map(({ id }) => id)).not.toContain('missing:adjuster:lash');
      expect(said.next).toMatchObject({ action: 'preload', sentence: expect.stringMatching(/bleed down/) });
    },
  },
];

tellEach(CALLS, assessAsTold('kept-workings-preload'));
