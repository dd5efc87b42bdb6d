import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { questionsFor } from '../../../server/mechanics/questions/questions.ts';
import { cleanEngine, readCleanly, withLobeRead } from './engine.ts';

const RUNS = 4000;
/** A few per cent of clean calls may be asked something strongly; more and nobody would listen. */
const MOST_STRONG = 0.005;

function shareAsked(weight: 'strong' | 'weak', quietOf: readonly string[] = []): number {
  const engines = fc.sample(cleanEngine, { numRuns: RUNS, seed: 20 });
  const asked = engines.filter((engine) =>
    questionsFor(readCleanly(engine)).some((each) => each.weight === weight && !quietOf.includes(each.code)),
  );
  return asked.length / RUNS;
}

describe('clean engines', () => {
  it('are seldom asked anything strongly', () => {
    expect(shareAsked('strong')).toBeLessThan(MOST_STRONG);
  });

  it('are seldom asked anything weakly but for the running spring', () => {
    expect(shareAsked('weak', ['spring-mixed'])).toBeLessThan(0.02);
  });

  it('are seldom asked anything strongly where lash, lifter and plunger were not spoken of', () => {
    const unsaid = {
      lash: 'not-said',
      lifter: 'not-said',
      alignment: 'not-said',
      restsOn: 'not-said',
    } as const;
    const asked = fc.sample(cleanEngine, { numRuns: RUNS, seed: 21 }).filter((engine) =>
      questionsFor({ ...readCleanly(engine), ...unsaid }).some(
        // How the plunger stands is asked wherever a lean would explain the reading: it takes one look.
        ({ weight, code }) => weight === 'strong' && code !== 'alignment-not-said',
      ),
    );
    expect(asked.length / RUNS).toBeLessThan(MOST_STRONG);
  });

  it('are almost never asked about a swap: two lobes alike and a card at its own limit can look like one', () => {
    const engines = fc.sample(cleanEngine, { numRuns: 20_000, seed: 22 });
    const asked = engines.filter((engine) =>
      questionsFor(withLobeRead(engine)).some((each) => each.code === 'valve-swapped'),
    );
    expect(asked.length / engines.length).toBeLessThan(0.0005);
  });

  it('are never asked about a turn, a unit, a point or a tip that left the retainer', () => {
    const absurd = ['turn-miscounted', 'unit-mixed', 'decimal-slip', 'out-of-travel', 'gross-lift-as-lobe'];
    fc.assert(
      fc.property(cleanEngine, (engine) => {
        const codes = [readCleanly(engine), withLobeRead(engine)].flatMap((input) =>
          questionsFor(input).map((question) => question.code),
        );
        expect(codes.filter((code) => absurd.includes(code))).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });
});
