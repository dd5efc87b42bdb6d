import type { z } from 'zod';
import type { Drawing, DrawnFor } from '../drawing.ts';

/** Draws an answer: `given` is the input in SI, `result` the JSON answer in inches. */
export type Draw = (given: unknown, result: unknown, drawnFor: DrawnFor) => readonly Drawing[];

/** Reads what a drawing needs from input and answer, each by a schema of its own, before anything is drawn. */
export function draws<Given extends z.ZodType, Result extends z.ZodType>(
  given: Given,
  result: Result,
  draw: (
    given: z.output<Given>,
    result: z.output<Result>,
    drawnFor: DrawnFor,
  ) => Drawing | undefined | readonly (Drawing | undefined)[],
): Draw {
  return (input, answer, drawnFor) =>
    [draw(given.parse(input), result.parse(answer), drawnFor)]
      .flat()
      .filter((each): each is Drawing => each !== undefined);
}
