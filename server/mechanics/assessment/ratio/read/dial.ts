import { allowance, toolAllowance } from '../../../kit/allowances.ts';
import { IN, MM } from '../../../kit/si.ts';
import { type Lack, toRead } from '../../common/lack.ts';
import { once } from '../../common/once.ts';
import type { Evidence, SheetEvidence } from '../../evidence.ts';
import { setUpsNow } from './set-ups.ts';

const USUAL = { perTurn: 0.1 * IN, graduation: 0.001 * IN };

/** The dial that the sheet is read with: that of the newest set-up, else the usual one of .100 in a turn. */
const dialOf = once((evidence: Evidence): typeof USUAL => {
  const newest = setUpsNow(evidence)
    .toSorted((a, b) => a.number - b.number)
    .at(-1);
  return newest === undefined ? USUAL : { perTurn: newest.perTurn, graduation: newest.graduation };
});

/** A dial that reads millimetres: one in a turn (common practice, no published source). */
const USUAL_METRIC = 1 * MM;
const isMetric = (perTurn: number): boolean => Math.abs(perTurn / MM - Math.round(perTurn / MM)) < 1e-6;
const inMillimetres = ({ readAs }: Pick<SheetEvidence, 'readAs'>): boolean => / mm$/.test(readAs);

/**
 * Travel of the dial's hand in one turn: as it was said with the readings, else of the dial of the set-up. Readings in
 * millimetres come off no inch dial: theirs is the usual one of millimetres then.
 */
export function perTurnOf(
  evidence: Evidence,
  readings: readonly Pick<SheetEvidence, 'perTurn' | 'readAs'>[],
): number {
  const said = readings.find(({ perTurn }) => perTurn !== undefined)?.perTurn;
  if (said !== undefined) return said;
  const { perTurn } = dialOf(evidence);
  return readings.some(inMillimetres) && !isMetric(perTurn) ? USUAL_METRIC : perTurn;
}

/**
 * How far off a lift may be, as a 95 % half-width [m]: as its tool repeats, of an indicator no less than a division of
 * its dial; of a tool that was not said, as of any entry.
 */
export function liftHalf(evidence: Evidence, readings: readonly Pick<SheetEvidence, 'tool'>[]): number {
  const { graduation } = dialOf(evidence);
  const halves = readings.map(({ tool }) =>
    tool === 'indicator' ? Math.max(toolAllowance(tool), graduation) : toolAllowance(tool),
  );
  return Math.max(...halves);
}

const isGuess = ({ tool }: Pick<SheetEvidence, 'tool'>): boolean => tool === 'guess';

/** What a figure lacks that nobody read with a tool: no word rests on a guess. */
export const guessLack = (readings: readonly Pick<SheetEvidence, 'tool'>[], what: string): Lack[] =>
  readings.some(isGuess)
    ? [toRead('with-a-tool', `a reading of the ${what} with a tool: this one is a guess`)]
    : [];

/** A tool that is off by more than what makes a valve odd tells no valve from its siblings. */
export const isTooCoarse = (readings: readonly Pick<SheetEvidence, 'tool'>[]): boolean =>
  readings.some(({ tool }) => toolAllowance(tool) > allowance('odd-beyond'));
