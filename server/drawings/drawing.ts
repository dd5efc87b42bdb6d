import { z } from 'zod';
import { benchFigure } from '../../shared/quantities/dial-words.ts';
import { toldIn } from '../../shared/quantities/spoken-units.ts';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import type { DrawingData } from '../../views/parts/drawing.examples.ts';

/**
 * A drawing: markup with every text in it escaped, title and words, and the same figures as a table. Scales and
 * curves are d3-scale's and d3-shape's: both are plain arithmetic on numbers and strings, so a drawing needs no
 * browser and no document, unlike chart libraries that build elements.
 */
export type Drawing = DrawingData;

/** Lengths as they are written on a drawing: in the unit of its page, whatever they were calculated in. */
interface Ruler {
  readonly unit: 'in' | 'mm';
  /** A length in inches, as a number in the unit of the page. */
  of(inches: number): number;
  /** `.482` or `12.24`, without its unit, for a dimension line. */
  figure(inches: number): string;
  /** `.482 in` or `12.24 mm`. */
  text(inches: number): string;
}

export function rulerOf(system: UnitSystem): Ruler {
  const unit = system === 'inch' ? 'in' : 'mm';
  const of = (inches: number) => (unit === 'in' ? inches : inches * 25.4);
  const figure = (inches: number) => benchFigure(inches, unit);
  return { unit, of, figure, text: (inches) => `${figure(inches)} ${toldIn(unit)}` };
}

/** What a drawing is made for: the prefix of its ids, and the unit of its lengths. */
export interface DrawnFor {
  readonly id: string;
  readonly ruler: Ruler;
}

/** A quantity of a JSON answer, read as its number. */
export const amount = z.object({ value: z.number() }).transform(({ value }) => value);
/** A length of an input: metres inside, inches here. */
export const inches = z.number().transform((metres) => metres / 0.0254);
/** An angle of an input: radians inside, degrees here. */
export const degrees = z.number().transform((radians) => (radians * 180) / Math.PI);
