import type { z } from 'zod';

/** An event that a build's log may hold: its name, and what is kept with it. */
export interface EventDefinition<Name extends string = string, Data extends z.ZodObject = z.ZodObject> {
  readonly name: Name;
  readonly data: Data;
}

type EventSet<Shapes extends Readonly<Record<string, z.ZodObject>>> = {
  readonly [Name in keyof Shapes & string]: EventDefinition<Name, Shapes[Name]>;
};

export type AnyEventSet = Readonly<Record<string, EventDefinition>>;

export type DataOf<Definition extends EventDefinition> = z.output<Definition['data']>;

/**
 * Declares the events of one aggregate. Rows are never rewritten, so a schema reads every row that was ever kept:
 * a member added to an event later has a default, which the writer must still give and an older row reads as.
 */
export function defineEvents<const Shapes extends Readonly<Record<string, z.ZodObject>>>(
  shapes: Shapes,
): EventSet<Shapes>;
export function defineEvents(shapes: Readonly<Record<string, z.ZodObject>>): AnyEventSet {
  return Object.fromEntries(Object.entries(shapes).map(([name, data]) => [name, { name, data }]));
}
