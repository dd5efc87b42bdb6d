import type { z } from 'zod';

/** A JSON document as it goes over the wire. */
export type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

type Part<Value> = Value extends readonly unknown[] | string | number | boolean | undefined
  ? never
  : keyof Value & string;

/** An output by its name; one inside another as `ratio.value`. */
export type OutputName<Result> = string &
  {
    [Name in keyof Result & string]: Name | `${Name}.${Part<NonNullable<Result[Name]>>}`;
  }[keyof Result & string];

/**
 * One computation of the service, registered once: its JSON route, schemas, documentation, reference page
 * and worked example all come from this. Inside, every quantity is a number in SI.
 */
export interface Computation<Input extends z.ZodType, Output extends z.ZodType> {
  /** The name in the URL, kebab-case. */
  readonly name: string;
  readonly title: string;
  /** One line: what it computes. */
  readonly summary: string;
  /** Words a builder or the desk would search by, beside title and summary. */
  readonly words: readonly string[];
  readonly input: Input;
  readonly output: Output;
  /** The equation as implemented, in plain text. */
  readonly equation: string;
  /** The same in TeX, for the reference page. */
  readonly tex: string;
  readonly source: string;
  readonly validity: string;
  /** What the answer assumes with these inputs. */
  assumptions(input: z.output<Input>, result: z.output<Output>): readonly string[];
  /** What the reader must be warned of with these inputs. */
  cautions(input: z.output<Input>, result: z.output<Output>): readonly string[];
  /** A worked example; a test runs it and compares with a relative tolerance of 1e-9. */
  readonly example: { readonly inputs: { readonly [key: string]: Json }; readonly result: Json };
  /** The output that is the answer in one line; of several the first that an answer has. */
  headline(input: z.output<Input>): readonly OutputName<z.output<Output>>[];
  compute(input: z.output<Input>): z.output<Output>;
  /** Set where the most that it may be given takes milliseconds: it is then done beside the thread that serves pages. */
  readonly heavy?: true;
  /** Refuses an answer that no engine of a call can have; by itself the sum is free of that. */
  ofEngine?(input: z.output<Input>, result: z.output<Output>): void;
}

/** A registration whose input and output types are not known to the one who holds it. */
export interface AnyComputation {
  open<Result>(
    visit: <Input extends z.ZodType, Output extends z.ZodType>(known: Computation<Input, Output>) => Result,
  ): Result;
}

/** Keeps the inferred types of a registration, and lets the registry open it without them. */
export function defineComputation<Input extends z.ZodType, Output extends z.ZodType>(
  definition: Computation<Input, Output>,
): Computation<Input, Output> & AnyComputation {
  return { ...definition, open: (visit) => visit(definition) };
}

/** For a computation that takes nothing for granted, or warns of nothing. */
export const nothing = (): readonly string[] => [];
