import { expect } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { type Call, of, PRELOAD, tellEach } from './call.ts';
import { lashOf } from './log-line.ts';

const LIFTED = { stopId: 'stop:plunger-bottomed:working-1', entryId: 'working-1' };

const SOLID_STUD = {
  call: { ...PLAIN.call, goal: 'adjuster' },
  rockers: { soldAs: 1.5 },
} satisfies Partial<Evidence>;
const COUNTED = { thread: '7/16-20', mount: 'stud-nut', ratio: 1.5, lifter: 'solid' };

const ONLY_WORKED_OUT = {
  id: 'answer',
  line: 9,
  code: 'plunger-bottomed',
  questionId:
    'question:plunger-bottomed:build:working-1:was-the-adjuster-really-turned-that-far-or-was-it-only-worked-out',
  question: '',
  answer: 'not-found',
  found: false,
};

const CALLS: readonly Call[] = [
  {
    // 1.5 × .08125 = .1219 of .120, told with another sum.
    name: 'turns past the bottom that was told with another sum stop it as well',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [
      ['lifter-preload', { ...PRELOAD, turns: 0.5, liftersTravel: '.120 in' }],
      ['adjuster', { ...PRELOAD, lifter: 'hydraulic', turns: 1.5 }],
    ],
    check: (said) =>
      expect(said.stop).toMatchObject([
        { entryId: 'working-2', sentence: expect.stringMatching(/\.002 in past the plunger’s bottom/) },
      ]),
  },
  {
    // .160 in wanted: nobody turned that yet.
    name: 'a preload that is wanted and no plunger goes is asked, and stops nothing',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [['adjuster', { ...PRELOAD, lifter: 'hydraulic', preloadWanted: '.160 in' }]],
    check: (said) => {
      expect(said.stop).toEqual([]);
      expect(of(said, 'adjuster')).toEqual([
        'Nothing is told of these turns yet. Is a preload of .160 in really wanted?',
      ]);
    },
  },
  {
    // .2 × .08125 = .01625, more than a sixteenth of a turn, .005, from .020 the other way: about at the bottom.
    name: 'turns are set against the usual band as a preload is',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [['adjuster', { ...PRELOAD, lifter: 'hydraulic', turns: 0.15 }]],
    check: (said) =>
      // .15 × .08125 = .0122.
      expect(of(said, 'adjuster')[0]).toMatch(
        /presses the plunger \.012 in, under the usual \.020 to \.060 in\./,
      ),
  },
  {
    // .75 × .050 × (1 + 1.5) = .09375; less .026 is .068.
    name: 'turns of a solid adjuster past the gap that was found: nobody turns it',
    base: { ...SOLID_STUD, lash: [lashOf('found', 0.026, 1)] },
    kept: [['adjuster', { ...COUNTED, turns: 0.75 }]],
    check: (said) => {
      expect(said.stop).toMatchObject([
        {
          id: 'stop:plunger-bottomed:working-1',
          code: 'plunger-bottomed',
          answered: false,
          sentence:
            'Do not turn it: the turns kept close the lash by .094 in, .068 in more than the .026 in of 2 exhaust, and hold the valve open by up to .068 in.',
        },
      ]);
      expect(said.stop[0]?.restsOn).toHaveLength(1);
      expect(said.next).toMatchObject({
        turns: false,
        sentence: expect.stringMatching(/back that adjuster off/),
      });
      expect(of(said, 'adjuster').join(' ')).not.toContain('Tighten');
      expect(said.details.workings.turnToMake).toBeUndefined();
    },
  },
  {
    // .2 × .125 = .025 of .026; of .020 more than there is.
    name: 'within the gap of one valve it is told, and not for one with less of a gap',
    base: {
      ...SOLID_STUD,
      lash: [lashOf('found', 0.026, 1), { ...lashOf('found', 0.02, 1), cylinder: 3 }],
    },
    kept: [['adjuster', { ...COUNTED, turns: 0.2 }]],
    check: (said) => {
      expect(said.stop).toEqual([]);
      expect(of(said, 'adjuster').join(' ')).toMatch(
        /closes the lash by \.025 in\. Not at 3 exhaust: with less of a gap the valve is held open\./,
      );
    },
  },
  {
    name: 'without a gap in the log it is said that less of one holds the valve open',
    base: SOLID_STUD,
    kept: [['adjuster', { ...COUNTED, turns: 0.2 }]],
    check: (said) => {
      expect(said.stop).toEqual([]);
      expect(of(said, 'adjuster')[0]).toMatch(
        /With less of a gap than that the valve is held open: read the gap first/,
      );
    },
  },
  {
    name: 'a gap that is set back by the turn later is no reason to stop',
    base: { ...SOLID_STUD, lash: [lashOf('found', 0.026, 1), lashOf('set', 0.008, 2)] },
    kept: [['adjuster', { ...COUNTED, turns: 0.15 }]],
    check: (said) => expect(said.stop).toEqual([]),
  },
  {
    name: 'no gap found, and tightened: nothing of it is free',
    base: { ...SOLID_STUD, lash: [lashOf('found', 0, 1)] },
    kept: [['adjuster', { ...COUNTED, turns: 0.1 }]],
    check: (said) => expect(said.stop[0]?.sentence).toMatch(/\.013 in, and 2 exhaust has no gap, and hold/),
  },
  {
    // −2 × .125 = .250 of gap.
    name: 'two turns backwards are asked: so wide a gap lets the pushrod out of its cup',
    base: { ...SOLID_STUD, lash: [lashOf('found', 0.026, 1)] },
    kept: [['adjuster', { ...COUNTED, turns: -2 }]],
    check: (said) => {
      expect(said.stop).toEqual([]);
      expect(of(said, 'adjuster').join(' ')).toMatch(
        /^Nothing is told of these turns yet\. Is the adjuster really to be backed off 2 turns\?/,
      );
    },
  },
  {
    name: 'a little backwards is told',
    base: { ...SOLID_STUD, lash: [lashOf('found', 0.016, 1)] },
    kept: [['adjuster', { ...COUNTED, turns: -0.05 }]],
    check: (said) => expect(of(said, 'adjuster').join(' ')).toMatch(/opens the lash by \.006 in\.$/),
  },
  {
    name: 'a turn from no gap is counted from nowhere: back off first',
    base: { ...SOLID_STUD, lash: [lashOf('found', 0, 1)] },
    kept: [['adjuster', { ...COUNTED, lashFound: '0 in', lashWanted: '.020 in' }]],
    check: (said) => {
      expect(of(said, 'adjuster').join(' ')).toMatch(
        /No gap was found at 2 exhaust.*Back off until there is a gap/,
      );
      expect(of(said, 'adjuster').join(' ')).not.toContain('Loosen');
      expect(said.details.workings.turnToMake).toBeUndefined();
    },
  },
  {
    name: 'no gap found on solid lifters: it is backed off, and not run',
    base: { ...SOLID_STUD, lash: [lashOf('found', 0, 1)] },
    kept: [],
    check: (said) => {
      expect(said.notToRun.map(({ id }) => id)).toEqual(['not-to-run:no-lash:2-exhaust']);
      expect(said.next).toMatchObject({ action: 'back-off', turns: false });
      expect(of(said, 'adjuster')[0]).toMatch(
        /^No gap at 2 exhaust: whether the valve is held open, and how far, is not known/,
      );
    },
  },
  {
    name: 'no gap on hydraulic lifters is none to be had',
    base: {
      ...SOLID_STUD,
      engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' },
      lash: [lashOf('found', 0, 1)],
    },
    kept: [],
    check: (said) => expect(said.notToRun).toEqual([]),
  },
  {
    // 2 × .08125 = .1625 of .150.
    name: 'only worked out, and lifted: the sum falls out, and the preload is asked for again',
    base: {
      call: { ...PLAIN.call, goal: 'adjuster', stopsLifted: [LIFTED] },
      engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' },
    },
    kept: [['lifter-preload', { ...PRELOAD, turns: 2, liftersTravel: '.150 in' }]],
    answers: [ONLY_WORKED_OUT],
    check: (said) => {
      expect(said.stop).toEqual([]);
      expect(of(said, 'adjuster')).toEqual([]);
      expect(said.next).toMatchObject({ action: 'preload' });
      expect(said.details.workings.onlyWorkedOut).toEqual(['working-1']);
    },
  },
  {
    name: 'the same of turns past a gap, and of a sum after it its travel counts',
    base: {
      call: { ...PLAIN.call, goal: 'adjuster', stopsLifted: [LIFTED] },
      engine: PLAIN.engine,
      lash: [lashOf('found', 0.026, 1)],
    },
    kept: [['adjuster', { ...COUNTED, turns: 0.75 }]],
    answers: [ONLY_WORKED_OUT],
    check: (said) => {
      expect(said.stop).toEqual([]);
      expect(of(said, 'adjuster')).toEqual([]);
    },
  },
  {
    name: 'answered so and not lifted yet the stop stays',
    kept: [['lifter-preload', { ...PRELOAD, turns: 2, liftersTravel: '.150 in' }]],
    answers: [ONLY_WORKED_OUT],
    check: (said) => {
      expect(said.stop).toHaveLength(1);
      expect(of(said, 'adjuster')).toEqual([
        'These turns were only worked out, as was answered: no adjuster stands so.',
      ]);
    },
  },
];

tellEach(CALLS, assessAsTold('kept-workings-counted-turns'));
