import { expect } from 'vitest';
import type { TipMarkEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { advice, type Call, codes, type Entry, headlines, id, lash, STUD, tellEach, V8 } from './call.ts';

function mark(width: number, at: number | 'valley' | 'exhaust', more: Partial<TipMarkEvidence> = {}): Entry {
  const side = typeof at === 'string' ? at : at === 0 ? 'centred' : at > 0 ? 'exhaust' : 'valley';
  return {
    list: 'tipMarks',
    entry: {
      id: id(),
      line: 0,
      standing: true,
      cylinder: 3,
      valve: 'intake',
      width: width * IN,
      side,
      ...(typeof at === 'number' && at !== 0 ? { off: Math.abs(at) * IN } : {}),
      readAs: `${width} in wide`,
      ...more,
    },
  };
}

const rod = (inches: number) => ({ pushrod: inches * IN });
const shims = (inches: number) => ({ shims: inches * IN });

const SHAFT = { engine: { ...PLAIN.engine, mounting: 'shaft' as const } };

const CALLS: readonly Call[] = [
  {
    name: 'one mark toward the valley, nobody measured how far',
    base: STUD,
    entries: [mark(0.06, 'valley', rod(7.8))],
    check: (said) => {
      expect(advice(said)).toEqual([
        expect.stringMatching(/^Lengthen the pushrod by \.050 in, to 7\.850 in/),
      ]);
      expect(codes(said)).toEqual(['mark-wide']);
    },
  },
  {
    name: 'three lengths, wide: least between them',
    base: STUD,
    // Slopes −.70 and .30 per inch about 7.775 and 7.825: level at 7.810, where the curve is .0545 wide, less under the
    // .055 than ink shows.
    entries: [mark(0.09, -0.05, rod(7.75)), mark(0.055, -0.02, rod(7.8)), mark(0.07, 0.01, rod(7.85))],
    check: (said) => {
      expect(advice(said)).toEqual([
        expect.stringMatching(/^Leave the pushrod at 7\.800 in: the mark is narrowest there/),
      ]);
      expect(codes(said)).toEqual(['mark-wide']);
    },
  },
  {
    name: 'three lengths, narrowest in the middle, and nothing beside it to call it wide',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.085, 0.04, rod(7.85)), mark(0.07, 0.02, rod(7.8)), mark(0.08, -0.01, rod(7.75))],
    check: (said) => {
      expect(headlines(said, 'geometry')).toEqual([
        expect.stringMatching(
          /^Tip mark of 3 intake at 7\.800 in: \.070 in wide, \.020 in toward the exhaust side\. No mark made alike is narrower, so it can’t be called wide; it is looked at again over \.047 in.*7\.800 in is the length: the mark is narrowest there/,
        ),
      ]);
      expect(said.next).toMatchObject({ action: 'said' });
    },
  },
  {
    name: 'wide toward the exhaust side on a stud: too long, and that is next',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.085, 0.04, rod(7.85))],
    check: (said) => {
      const told = /too long: try 7\.800 in, and ink again/;
      expect(headlines(said, 'geometry')).toEqual([expect.stringMatching(told)]);
      expect(said.next).toMatchObject({ step: 'geometry', sentence: expect.stringMatching(told) });
    },
  },
  {
    name: 'sideways: no length mends that',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.045, 0, { side: 'sideways', off: 0.05 * IN, ...rod(7.8) })],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(/\.050 in off sideways.*No length mends that/);
      expect(said.next?.sentence).toMatch(/line up the guide plate/);
    },
  },
  {
    name: 'narrower than the lift can sweep: inked whole, and again',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.015, 0, rod(7.8))],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(/Too narrow to be all of it/);
      expect(said.next?.sentence).toMatch(/ink the whole tip/);
    },
  },
  {
    name: 'ordinary and centred: that is the length',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.075, 0.035, rod(7.85)), mark(0.044, 0, rod(7.8))],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(
        /Ordinary: that is up to \.047 in.*7\.800 in is the length/,
      );
      expect(said.next?.step).toBe('notes');
    },
  },
  {
    name: 'a longer pushrod that went the wrong way',
    base: STUD,
    entries: [mark(0.05, -0.01, rod(7.75)), mark(0.05, -0.045, rod(7.8))],
    check: (said) => {
      expect(advice(said)).toEqual([expect.stringMatching(/^These marks contradict each other/)]);
      expect(codes(said)).toEqual(['length-moves-nothing']);
    },
  },
  {
    name: 'a length told to a gauge beside one over the ends is one length: 7.783 + .017',
    base: STUD,
    entries: [
      mark(0.045, -0.03, { ...rod(7.783), pushrodOver: 'gauge' }),
      mark(0.045, 0.03, { ...rod(7.8), pushrodOver: 'ends' }),
    ],
    check: (said) => expect(codes(said)).toEqual(['marks-apart']),
  },
  {
    // 7.100 and 7.050 over the ends are 7.083 and 7.033 by a gauge, .017 less; .050 on from 7.010 is 6.960, 6.977 over.
    name: 'lengths told both ways: what is next is told as the mark in hand was, with the other way beside it',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [
      mark(0.095, 0.035, { ...rod(7.1), pushrodOver: 'ends' }),
      mark(0.07, 0.015, { ...rod(7.05), pushrodOver: 'ends' }),
      mark(0.062, 0, { ...rod(7.01), pushrodOver: 'gauge' }),
    ],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(
        /at 7\.010 in by gauge.*Next try 6\.960 in by gauge, 6\.977 in over its ends/,
      );
      expect(said.questions.map(({ ask }) => ask).join(' ')).toMatch(
        /Would 6\.960 in by gauge.*That is \.050 in shorter/,
      );
    },
  },
  {
    name: 'a length of which nobody said over what, among others told by gauge, is asked before one is tried',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [
      mark(0.085, 0.03, { ...rod(7.1), pushrodOver: 'gauge' }),
      mark(0.07, 0.015, { ...rod(7.05), pushrodOver: 'gauge' }),
      mark(0.062, 0, rod(7.02)),
    ],
    check: (said) => {
      expect(codes(said)).toEqual(['length-over-what']);
      expect(headlines(said, 'geometry')[0]).toMatch(/Say first over what each pushrod length was taken/);
      expect(said.next).toMatchObject({ action: 'length-over-what', turns: false });
    },
  },
  {
    name: 'a length that was inked and was wide is not tried again for its place',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [
      mark(0.085, 0.03, rod(7.1)),
      mark(0.07, 0.015, rod(7.05)),
      mark(0.062, 0, rod(7.02)),
      mark(0.03, -0.01, rod(7)),
    ],
    check: (said) => expect(headlines(said, 'geometry')[0]).toMatch(/7\.000 in is the length/),
  },
  {
    name: 'one mark alone is not called wide, up to the .080 of the trade',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.075, 0.04, rod(7.85))],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(/One mark alone can’t be called wide/);
      expect(said.judgements.find(({ id }) => id.startsWith('mark:'))?.word).toBe('cannot-tell');
    },
  },
  {
    name: 'a mark whose length was told is gone on from, not one without',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.085, 0.035), mark(0.095, 0.035, rod(7.1))],
    check: (said) =>
      expect(headlines(said, 'geometry')[0]).toMatch(/at 7\.100 in: \.095 in wide.*try 7\.050 in/),
  },
  {
    name: 'sideways on a shaft: there is no plate and no stud',
    base: { ...SHAFT, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.045, 0, { side: 'sideways', off: 0.05 * IN })],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(/spacers on its shaft/);
      expect(JSON.stringify(said.questions)).not.toMatch(/guide plate|the stud/);
    },
  },
  {
    name: 'two heights of a stand',
    base: SHAFT,
    entries: [mark(0.09, 0.02, shims(0)), mark(0.07, 0.03, shims(0.03))],
    check: (said) => {
      expect(advice(said)).toEqual([
        expect.stringMatching(/^Raise the stands by \.030 in, to \.060 in of shims/),
      ]);
      expect(codes(said)).toEqual(['mark-wide']);
    },
  },
  {
    name: 'a mark off the edge: nothing is turned, set or changed',
    base: { engine: { ...V8.engine, mounting: 'stud' } },
    entries: [mark(0.12, 0.125, { stem: 0.342 * IN, ...rod(7.8) }), lash(0.02, '2026-03-01')],
    check: (said) => {
      expect(said.stop.map(({ code }) => code)).toEqual(['mark-at-the-edge']);
      expect(advice(said)).toEqual([expect.stringMatching(/^Not while the stop stands; after it: shorten/)]);
      expect(said.details.lash.setting.rows).toEqual([]);
    },
  },
];

tellEach(CALLS, assessAsTold('setting-calls-tip-marks'));
