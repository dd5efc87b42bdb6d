import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN } from '../../../server/mechanics/kit/si.ts';
import { usualEvidence } from '../../tools/told/kept.ts';
import { withEachAnswer } from './more/each-answer.ts';
import { OF_MARKS_AND_SCANS } from './more/of-marks-and-scans.ts';
import { OF_SET_UPS } from './more/of-set-ups.ts';
import { OF_SETTINGS } from './more/of-settings.ts';
import { OF_SHEETS, OF_SHEETS_ANSWERED } from './more/of-sheets.ts';

/**
 * What can be known of a build and is of none that the tests of the mechanics describe: it comes from records alone. The
 * search needs each member once, to know that it may be there, and calls that it would find only by many steps at once
 * stand in `more/`. Engines and figures are invented.
 */
const MORE: readonly Partial<Evidence>[] = [
  {
    card: {
      intake: {
        centreline: 108 * DEG,
        durations: [
          { atLift: 0.006 * IN, duration: 282 * DEG },
          { atLift: 0.05 * IN, duration: 236 * DEG },
        ],
      },
      exhaust: { centreline: 114 * DEG, durations: [{ atLift: 0.05 * IN, duration: 242 * DEG }] },
    },
    workings: [
      {
        id: 'stop',
        line: 1,
        computation: 'top-dead-centre',
        timing: { of: 'stop', correction: 2 * DEG, trueReading: 36 * DEG },
      },
      {
        id: 'events',
        line: 2,
        computation: 'cam-timing',
        timing: {
          of: 'peak',
          side: 'intake',
          fromEvents: true,
          centreline: 106 * DEG,
          duration: 238 * DEG,
          card: 108 * DEG,
          cardDuration: 240 * DEG,
          righted: true,
          pointerOff: 3 * DEG,
        },
      },
    ],
  },
  {
    engine: { lifter: 'solid-flat', rodMaterial: 'aluminium', pinOffset: 0.06 * IN },
    workings: [
      {
        id: 'preload',
        line: 1,
        computation: 'lifter-preload',
        set: {
          ...{ of: 'preload', thread: '7/16-20 UNF', size: '7/16', pitch: 0.05 * IN, mount: 'stud-nut' },
          ...{ ratio: 1.6, turns: 2, preload: 0.1625 * IN, inBand: 'over', from: 0.02 * IN, to: 0.06 * IN },
          ...{ wanted: false, travel: 0.15 * IN, travelUnsaid: true, solid: true },
        },
      },
    ],
  },
  {
    answers: [
      {
        id: 'leans',
        line: 1,
        code: 'plunger-leaning',
        question: 'Did the plunger lean?',
        answer: 'found',
        found: true,
        lean: 8 * DEG,
      },
    ],
  },
];

/** Calls of which each question is answered in each way too. */
const ANSWERED = [...OF_SETTINGS, ...OF_MARKS_AND_SCANS, ...OF_SHEETS_ANSWERED];

const whole = (more: Partial<Evidence>): Evidence => ({ ...usualEvidence(), ...more });

export const moreBuilds = (): Evidence[] => [
  ...[...MORE, ...OF_SET_UPS, ...OF_SHEETS].map(whole),
  ...ANSWERED.flatMap((more) => withEachAnswer(whole(more))),
];
