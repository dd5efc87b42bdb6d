import { expect } from 'vitest';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { type Call, codes, type Entry, headlines, lash, tellEach } from './call.ts';

const DEG = Math.PI / 180;

const stop = (off: number): Entry => ({
  list: 'workings',
  entry: {
    id: 'stop',
    line: 0,
    computation: 'top-dead-centre',
    timing: { of: 'stop', correction: off * DEG, trueReading: 36 * DEG },
  },
});
const peak = (side: 'intake' | 'exhaust', at: number, advance: number, righted = false): Entry => ({
  list: 'workings',
  entry: {
    id: `peak-${side}-${at}`,
    line: 0,
    computation: 'centreline',
    // Earlier is before the card's on an intake, and further before TDC than it on an exhaust.
    timing: {
      of: 'peak',
      side,
      fromEvents: false,
      centreline: at * DEG,
      card: (side === 'intake' ? at + advance : at - advance) * DEG,
      righted,
    },
  },
});

const CALLS: readonly Call[] = [
  {
    name: 'a cam 4° early, nobody read the stop',
    base: {},
    entries: [peak('intake', 102, 4), lash(0.02, '2026-03-01')],
    shown: false,
    check: (said) => {
      expect(headlines(said, 'timing')).toEqual([
        expect.stringMatching(
          /top dead centre is not proved.*No word against the card before that\. If it is 4° advanced.*costs intake gap/,
        ),
      ]);
      expect(said.quantities.find(({ name }) => name === 'Centreline of the intake')?.lacks).toEqual([
        'top dead centre by a positive stop',
      ]);
    },
  },
  {
    name: 'the stop read, its error taken off; the two lobes 5° apart',
    base: {},
    entries: [stop(0.75), peak('intake', 108, -3, true), peak('exhaust', 112, 2, true)],
    shown: false,
    check: (said) => {
      expect(headlines(said, 'timing').join(' ')).not.toContain('not proved');
      // One cam moves both alike: nothing is told of an advance, nor of what it costs, before that is answered.
      expect(headlines(said, 'timing')).toEqual(
        Array.from({ length: 2 }, () =>
          expect.stringMatching(/No word against the card yet: were both read/),
        ),
      );
      expect(headlines(said, 'timing').join(' ')).not.toMatch(/costs/);
      expect(codes(said)).toEqual(['lobes-apart']);
    },
  },
];

tellEach(CALLS, assessAsTold('setting-calls-timing'));
