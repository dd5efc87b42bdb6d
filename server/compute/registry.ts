import { readdirSync } from 'node:fs';
import { z } from 'zod';
import { InputFaults, impossible } from '../../shared/problems/faults.ts';
import { pointerOf } from '../../shared/problems/pointer.ts';
import { inSpoken } from '../../shared/quantities/authored.ts';
import { speaking } from '../../shared/quantities/spoken-units.ts';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import { describeOutput } from '../../shared/schemas/describe-output.ts';
import type { AnyComputation, Computation, Json } from '../mechanics/kit/computation.ts';
import { encoderFor, NotFinite } from './encode.ts';
import { faultsOf, withReceived } from './faults-of.ts';

/** The answer of a computation as it goes over the wire. */
export interface Answer {
  readonly result: unknown;
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
  readonly basis: { readonly equation: string; readonly source: string; readonly validity: string };
}

/** A computation ready to be run from JSON, with its documentation. */
export interface Registered {
  readonly name: string;
  readonly title: string;
  readonly summary: string;
  readonly words: readonly string[];
  readonly equation: string;
  readonly tex: string;
  readonly source: string;
  readonly validity: string;
  readonly input: z.ZodType;
  readonly output: z.ZodType;
  readonly inputSchema: Json;
  readonly outputSchema: Json;
  readonly example: { readonly inputs: { readonly [key: string]: Json }; readonly result: Json };
  /** Whether the most that it may be given takes milliseconds. */
  readonly heavy: boolean;
  /** The output that is the answer in one line, for what came in; of several the first that the answer has. */
  headline(body: unknown): readonly string[];
  /** `of` an engine of a call, an answer that no engine can have is refused. */
  run(body: unknown, system: UnitSystem, of?: 'engine'): Answer;
}

function jsonSchema(schema: z.ZodType, io: 'input' | 'output'): Json {
  return z.json().parse(
    JSON.parse(
      JSON.stringify(
        z.toJSONSchema(schema, {
          io,
          unrepresentable: 'any',
          override: describeOutput,
        }),
      ),
    ),
  );
}

/** The fields of an input that hold numbers, whichever way they came. */
function numericFields(data: unknown): string[] {
  if (typeof data !== 'object' || data === null) return [];
  return Object.entries(data).flatMap(([key, value]) =>
    typeof value === 'number' || (typeof value === 'object' && value !== null) ? [pointerOf([key])] : [],
  );
}

/** An answer past what a double holds is the doing of all the numbers together: each field is named. */
function encodeFinite(encode: () => unknown, data: unknown): unknown {
  try {
    return encode();
  } catch (error) {
    if (!(error instanceof NotFinite)) throw error;
    return impossible(numericFields(data), 'together these values give no finite answer');
  }
}

/** Makes a computation runnable from JSON. */
export function register<I extends z.ZodType, O extends z.ZodType>(source: Computation<I, O>): Registered {
  const encode = encoderFor(source.output);
  // Compiled at its first use, so that a start does not wait for computations that nobody asks for.
  let quick: I | undefined;
  const read = (body: unknown) => {
    quick ??= z.compile(source.input);
    return quick.safeParse(body);
  };
  const basis = { equation: source.equation, source: source.source, validity: source.validity };
  return {
    ...source,
    inputSchema: jsonSchema(source.input, 'input'),
    outputSchema: jsonSchema(source.output, 'output'),
    heavy: source.heavy ?? false,
    headline(body) {
      const parsed = read(body);
      return parsed.success ? source.headline(parsed.data) : [];
    },
    run(body, system, of) {
      const parsed = read(body);
      if (!parsed.success) throw new InputFaults(faultsOf(parsed.error, body));
      try {
        const result = source.compute(parsed.data);
        if (of === 'engine') source.ofEngine?.(parsed.data, result);
        return {
          result: encodeFinite(() => encode(result, system), parsed.data),
          assumptions: speaking(system, () => source.assumptions(parsed.data, result).map(inSpoken)),
          cautions: speaking(system, () => source.cautions(parsed.data, result).map(inSpoken)),
          basis,
        };
      } catch (error) {
        if (!(error instanceof InputFaults)) throw error;
        throw new InputFaults(error.faults.map((fault) => withReceived(fault, body)));
      }
    },
  };
}

const FOLDER = new URL('../mechanics/computations/', import.meta.url);

/** Loads every computation: each file of the folder exports one as `computation`. */
export async function loadComputations(): Promise<ReadonlyMap<string, Registered>> {
  const files = readdirSync(FOLDER)
    .filter((file) => file.endsWith('.ts'))
    .sort();
  const found = new Map<string, Registered>();
  for (const file of files) {
    const module: { computation?: AnyComputation } = await import(new URL(file, FOLDER).href);
    if (module.computation === undefined) throw new Error(`${file} exports no computation`);
    const registered = module.computation.open(register);
    found.set(registered.name, registered);
  }
  return found;
}
