import { formatFigure } from '../../../shared/quantities/format.ts';
import { spokenUnits, toldIn } from '../../../shared/quantities/spoken-units.ts';
import { answerUnit } from '../../../shared/quantities/units.ts';
import { IN, LBF } from './si.ts';

/** The last bits of the arithmetic go before the rounding: .0025 in is not told as .002. */
const clean = (value: number): number => Number(value.toPrecision(12));

/** A length told to so many places of an inch, without its unit: the units of the call decide what it is written in. */
export const bareLength = (si: number, places: number): string =>
  formatFigure({ value: clean(si / IN), unit: 'in' }, { places });

/** `.482`: a length without its unit; three places of an inch, since no gauge on an engine is finer. */
export const bareInches = (si: number): string => bareLength(si, 3);

/** `.482 in`, or `12.24 mm` where the call speaks millimetres. */
export const inches = (si: number): string => `${bareInches(si)} ${toldIn('in')}`;

/** `.0275`: a feeler gap, or what follows from two of them, with the half of a thousandth where it has one. */
export function bareFeeler(si: number): string {
  const halves = clean((si / IN) * 2000);
  const whole = Math.round(halves);
  const isHalf = Math.abs(halves - whole) < 1e-6 && whole % 2 !== 0;
  return isHalf && spokenUnits() === 'inch' ? bareLength(si, 4) : bareInches(si);
}

/** `.0275 in`, `.028 in` */
export const feeler = (si: number): string => `${bareFeeler(si)} ${toldIn('in')}`;

/** `.006 to .008 in`: what two gaps leave between them, with its unit once; one figure where they are one. */
export const feelersBetween = (low: number, high = low): string =>
  feeler(low) === feeler(high) ? feeler(low) : `${bareFeeler(low)} to ${feeler(high)}`;

/** `.018 in low`: a difference in the one way in which it is told everywhere. */
export const lowOrHigh = (off: number): string => `${inches(Math.abs(off))} ${off < 0 ? 'low' : 'high'}`;

/** The step that a load is told in, SI: a spring's own tolerance hides anything finer than 5 lb, or 20 N. */
const LOAD_STEP = { inch: 5 * LBF, metric: 20 } as const;
const LOAD_UNIT = { inch: { name: 'lb', is: LBF }, metric: { name: answerUnit('load', 'metric'), is: 1 } };

/** `310`: a load without its unit. */
export function bareLoad(newtons: number): string {
  const system = spokenUnits();
  const step = LOAD_STEP[system];
  return String(Math.round((Math.round(newtons / step) * step) / LOAD_UNIT[system].is));
}

/** `310 lb`, `1380 N`: no finer than a spring's own tolerance. */
export const loadSaid = (newtons: number): string => `${bareLoad(newtons)} ${LOAD_UNIT[spokenUnits()].name}`;
