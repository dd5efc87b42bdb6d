import { z } from 'zod';
import type { Dimension } from '../quantities/units.ts';
import { outputDimension } from './field-info.ts';

/** A quantity of an answer: a number in SI inside, `{ value, unit }` outside. */
export function out(dimension: Dimension, description: string) {
  const schema = z.number().meta({ description });
  outputDimension.add(schema, { dimension });
  return schema;
}

/** A bare number of an answer. */
export const outNumber = (description: string) => z.number().meta({ description });
export const outWord = <const Words extends readonly [string, ...string[]]>(
  words: Words,
  description: string,
) => z.enum(words).meta({ description });
export const outText = (description: string) => z.string().meta({ description });
export const outList = <Item extends z.ZodType>(item: Item, description: string) =>
  z.array(item).meta({ description });
