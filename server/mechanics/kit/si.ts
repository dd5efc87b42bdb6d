import { UNITS } from '../../../shared/quantities/units.ts';

/** Multiply a figure in the unit by its constant to have it in SI; divide to have it back. */
export const IN = UNITS.in.toSi;
export const MM = UNITS.mm.toSi;
export const LBF = UNITS.lbf.toSi;
export const LBF_PER_IN = UNITS['lbf/in'].toSi;
export const DEG = UNITS.deg.toSi;
