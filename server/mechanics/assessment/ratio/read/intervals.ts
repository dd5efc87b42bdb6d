import type { PassEvidence } from '../../evidence.ts';
import { zeroLeft } from './zero.ts';

interface Tool {
  readonly graduation: number;
  readonly errorLimit: number;
}

/** For 95 %, with a rectangular limit leading (JCGM 100:2008, 6.3). */
const COVERAGE = 2;

function scatter(values: readonly number[]): number {
  const count = values.length;
  if (count < 2) return 0;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (count - 1) / count);
}

/** Half-width at 95 % of the mean of passes: their scatter, the division, the limit of the tool and a zero that moved. */
export function halfWidthOf(passes: readonly PassEvidence[], tool: Tool, added = 0): number {
  const repeat = scatter(passes.map(({ value }) => value));
  const limits = ((tool.errorLimit + zeroLeft(passes)) ** 2 + tool.graduation ** 2 / 4 + added ** 2) / 3;
  return COVERAGE * Math.sqrt(repeat ** 2 + limits);
}
