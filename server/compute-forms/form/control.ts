import type { FieldRange } from '../../../shared/quantities/field-range.ts';
import type { Dimension, Unit } from '../../../shared/quantities/units.ts';

/** What every entry of a generated form has; `name` is its place in the body with dots between the parts. */
export interface Named {
  readonly name: string;
  readonly label: string;
  /** What it is, in the words of the schema. */
  readonly about: string;
  readonly optional: boolean;
}

/** How one entry is typed. */
export type Entry =
  | {
      readonly as: 'quantity' | 'quantities';
      readonly dimension: Dimension;
      readonly unit: Unit;
      /** What it can be, where it is of a call. */
      readonly canBe?: FieldRange;
    }
  | { readonly as: 'event'; readonly sides: readonly string[] }
  | { readonly as: 'word'; readonly words: readonly string[] }
  /** Objects of a few plain entries: one on a line. */
  | { readonly as: 'lines'; readonly columns: readonly Leaf[] }
  /** A list of lists: one list on a line. */
  | { readonly as: 'grid'; readonly cell: Entry }
  | { readonly as: 'turns' | 'number' | 'numbers' | 'truth' | 'text' | 'json' };

export type Leaf = Named & { readonly kind: 'leaf'; readonly entry: Entry };
/** An object. */
export type Group = Named & {
  readonly kind: 'group';
  readonly parts: readonly Control[];
};
/** A list of objects with many entries: each a group with a number. */
type Repeat = Named & { readonly kind: 'repeat'; item(index: number): Group };

export type Control = Leaf | Group | Repeat;
