import { formatNumber } from '../../../shared/quantities/format.ts';
import { IN } from './si.ts';

/** The last bits of the arithmetic go before the rounding: .0025 in is not told as .002. */
const clean = (value: number): number => Number(value.toPrecision(12));

/** `.482`: a length in inches without its unit; three places, since no gauge on an engine is finer. */
export const bareInches = (si: number): string => formatNumber(clean(si / IN), 3);

/** `.482 in` */
export const inches = (si: number): string => `${bareInches(si)} in`;

/** `.018 in low`: a difference in the one way in which it is told everywhere. */
export const lowOrHigh = (off: number): string => `${inches(Math.abs(off))} ${off < 0 ? 'low' : 'high'}`;
