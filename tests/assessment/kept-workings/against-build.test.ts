import { expect } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { type Call, codes, of, PRELOAD, SOLID, tellEach } from './call.ts';

const CALLS: readonly Call[] = [
  {
    name: 'a pushrod for hydraulic lifters with a lash taken off is asked, and not told',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' } },
    kept: [['pushrod-length', { checkerAtZero: '6.7 in', pitch: '.05 in', turns: 0, less: '.0125 in' }]],
    check: (said) => {
      expect(of(said, 'geometry')[0]).toMatch(/^Nothing is told of this length yet/);
      expect(said.questions.find(({ code }) => code === 'sum-unlikely')?.size).toMatch(
        /a lash was taken off/,
      );
    },
  },
  {
    name: 'a pushrod for hydraulic lifters without their preload is asked',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' } },
    kept: [['pushrod-length', { checkerAtZero: '6.7 in', pitch: '.05 in', turns: 0 }]],
    check: (said) =>
      expect(said.questions.find(({ code }) => code === 'sum-unlikely')?.size).toMatch(
        /no preload was added/,
      ),
  },
  {
    name: 'an engine of buckets has no adjuster that is turned',
    base: { engine: { cylinders: 4, gear: 'bucket', lifter: 'solid-flat' } },
    kept: [['adjuster', SOLID]],
    check: (said) => {
      expect(of(said, 'adjuster').join(' ')).not.toContain('ighten');
      expect(said.questions.find(({ code }) => code === 'sum-unlikely')?.size).toMatch(/no adjuster/);
    },
  },
  {
    name: 'a sum with another adjuster, ratio and lash than the build has is asked, and not told',
    base: {
      rockers: { soldAs: 1.5 },
      card: { ...PLAIN.card, intake: { lash: 0.022 * IN }, exhaust: { lash: 0.024 * IN } },
    },
    kept: [['adjuster', { ...SOLID, mount: 'cup-screw' }]],
    check: (said) => {
      expect(of(said, 'adjuster')[0]).toMatch(/^Nothing is told of these turns yet/);
      const size = said.questions.find(({ code }) => code === 'sum-unlikely')?.size;
      expect(size).toMatch(/on a stud.*screw at the pushrod.*1\.5.*1\.6.*\.022 in and \.024 in.*\.016 in/);
    },
  },
  {
    name: 'a lash set on a build of hydraulic lifters is asked',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } },
    kept: [['adjuster', SOLID]],
    check: (said) => expect(codes(said)).toContain('lifters-differ'),
  },
  {
    name: 'two threads for one stud are asked',
    kept: [
      ['adjuster', SOLID],
      ['adjuster', { ...SOLID, thread: '3/8-24' }],
    ],
    check: (said) => {
      const asked = said.questions.find(({ code }) => code === 'threads-differ');
      expect(asked?.ask).toBe('Which thread is on the stud?');
      // .050 ÷ .041667 is a fifth more.
      expect(asked?.size).toMatch(/3\/8-24 UNF and 7\/16-20 UNF.*20 % further/);
      expect(of(said, 'adjuster')).toEqual([
        'Nothing is told of these turns yet. Which thread is on the stud?',
      ]);
    },
  },
  {
    name: 'a sum for 7/16 on a build of 3/8 studs is asked',
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat', studSize: '3/8' } },
    kept: [['lifter-preload', { ...PRELOAD, turns: 0.5 }]],
    check: (said) => expect(codes(said)).toContain('threads-differ'),
  },
  {
    name: 'found wrong and worked out again: asked no more',
    answers: [
      {
        id: 'answer',
        line: 2,
        code: 'threads-differ',
        question: 'Which thread is on the stud?',
        answer: 'found',
        found: true,
      },
    ],
    base: { engine: { ...PLAIN.engine, lifter: 'hydraulic-flat', studSize: '3/8' } },
    kept: [
      ['adjuster', SOLID],
      ['lifter-preload', { ...PRELOAD, turns: 0.5 }],
      ['adjuster', { ...SOLID, thread: '3/8-24' }],
    ],
    check: (said) => expect(codes(said)).not.toContain('threads-differ'),
  },
];

tellEach(CALLS, assessAsTold('kept-workings-against-build'));
