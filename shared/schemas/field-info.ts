import { z } from 'zod';
import type { FieldRange } from '../quantities/field-range.ts';
import type { Dimension } from '../quantities/units.ts';

/** What a page must know of a field to draw a control for it, beside its schema. */
export type FieldInfo =
  | {
      readonly control: 'quantity';
      readonly dimension: Dimension;
      /** What it can be in a call; a computation by itself takes whatever a machine part can be. */
      readonly canBe?: FieldRange;
      /** What it can be by another field of the same form: a reading that is picked may be of any of them. */
      readonly canBeByKind?: readonly FieldRange[];
    }
  | { readonly control: 'quantities'; readonly dimension: Dimension; readonly canBe?: FieldRange }
  | { readonly control: 'event'; readonly sides: readonly string[] }
  /** Of an adjuster’s turns also what they can be in a call. */
  | { readonly control: 'number'; readonly turns?: { readonly least: number; readonly most: number } }
  | { readonly control: 'numbers' }
  /** Words that the schema itself makes sense of, such as a thread's designation. */
  | { readonly control: 'text' };

/** Field schemas of inputs, with their controls. */
export const fieldInfo = z.registry<FieldInfo>();

/** Number schemas of outputs that carry a dimension; the value inside is in SI. */
export const outputDimension = z.registry<{ dimension: Dimension }>();

/** Number schemas of outputs that are cam events: an angle in SI inside, told from this side outside. */
export const outputEvent = z.registry<{ side: 'BTDC' | 'ATDC' | 'BBDC' | 'ABDC' }>();

/** Number schemas of outputs that are places in a list: counted from 0 in JSON, and from 1 where people read them. */
export const outputPlace = z.registry<{ what: string }>();
