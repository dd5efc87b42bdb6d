import type { z } from 'zod';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import { type Drawing, type DrawnFor, rulerOf } from './drawing.ts';

type Draw = (given: unknown, result: unknown, drawnFor: DrawnFor) => Drawing | undefined;

/** Reads what a drawing needs from input and answer, each by its own schema, before it is drawn. */
function draws<Given extends z.ZodType, Result extends z.ZodType>(
  given: Given,
  result: Result,
  draw: (given: z.output<Given>, result: z.output<Result>, drawnFor: DrawnFor) => Drawing | undefined,
): Draw {
  return (input, answer, drawnFor) => draw(given.parse(input), result.parse(answer), drawnFor);
}

/** Which computation has which drawing; `result` is the JSON answer in inches. */
export const DRAWINGS: Readonly<Record<string, Draw>> = {};
void draws;

/** The drawing of an answer, if that computation has one. */
export function drawingOf(
  each: { readonly name: string; readonly input: z.ZodType },
  body: unknown,
  resultInInches: unknown,
  units: UnitSystem,
): Drawing | undefined {
  const draw = DRAWINGS[each.name];
  return draw?.(each.input.parse(body), resultInInches, {
    id: `drawing-${each.name}`,
    ruler: rulerOf(units),
  });
}
