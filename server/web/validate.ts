import type { FastifySchemaCompiler } from 'fastify';
import type { z } from 'zod';
import { InputFaults } from '../../shared/problems/faults.ts';
import { faultsOf } from '../compute/faults-of.ts';
import { Failure } from '../problems/failure.ts';

/** An input by its schema; every fault is told at its own pointer. */
export function checked<S extends z.ZodType>(schema: S, value: unknown): z.output<S> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  throw new InputFaults(faultsOf(parsed.error, value));
}

/** The parts of an address: one that can't be an id leads nowhere. */
export function checkedParams<S extends z.ZodType>(schema: S, value: unknown): z.output<S> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  throw new Failure('not-found', 'nothing is here');
}

/**
 * Routes declare their schemas for the document and check their inputs themselves, where the result has its
 * type; the framework's own check would parse everything a second time.
 */
export const leaveUnchecked: FastifySchemaCompiler<z.ZodType> = () => (value) => ({ value });
