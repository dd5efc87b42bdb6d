import { z } from 'zod';
import type { Dimension } from '../quantities/units.ts';
import type { Side } from './event-field.ts';
import { outputDimension, outputEvent, outputPlace } from './field-info.ts';

declare const inside: unique symbol;

/** Marks the type of a schema whose number is in SI inside and has another form outside. */
export interface SiNumber {
  readonly [inside]: 'SI';
}

/** A quantity of an answer: a number in SI inside, `{ value, unit }` outside. */
export function out(dimension: Dimension, description: string): z.ZodNumber & SiNumber;
export function out(dimension: Dimension, description: string): z.ZodNumber {
  const schema = z.number().meta({ description });
  outputDimension.add(schema, { dimension });
  return schema;
}

/**
 * A cam event of an answer, told from `side` of its dead centre and negative on the other: an angle in SI
 * inside, `{ value, unit, side }` outside.
 */
export function outEvent(side: Side, description: string): z.ZodNumber & SiNumber;
export function outEvent(side: Side, description: string): z.ZodNumber {
  const schema = z.number().meta({ description });
  outputEvent.add(schema, { side });
  return schema;
}

/** A bare number of an answer. */
export const outNumber = (description: string) => z.number().meta({ description });
/** Which one of a list: counted from 0 in the answer; a page tells it as its tables number their rows. */
export const outPlace = (what: string) => {
  const schema = z.number().meta({ description: `${what}, counted from 0` });
  outputPlace.add(schema, { what });
  return schema;
};
export const outWord = <const Words extends readonly [string, ...string[]]>(
  words: Words,
  description: string,
) => z.enum(words).meta({ description });
export const outText = (description: string) => z.string().meta({ description });
export const outList = <Item extends z.ZodType>(item: Item, description: string) =>
  z.array(item).meta({ description });
