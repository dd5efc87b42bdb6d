import type { FastifySchemaCompiler } from 'fastify';
import { z } from 'zod';
import { InputFaults } from '../../shared/problems/faults.ts';
import { faultsOf } from '../compute/faults-of.ts';
import { Failure } from '../problems/failure.ts';

/** Checks bodies, queries and path parts by their zod schemas; every fault is told at its pointer. */
export const compileValidator: FastifySchemaCompiler<z.ZodType> = ({ schema, httpPart, url }) => {
  // A computation parses its own body, once, into the numbers it works with.
  if (httpPart === 'body' && url.startsWith('/api/v1/compute/')) return (data) => ({ value: data });
  return (data) => {
    const parsed = schema.safeParse(data ?? {});
    if (parsed.success) return { value: parsed.data };
    if (httpPart === 'params') return { error: new Failure('not-found', 'nothing is here') };
    return { error: new InputFaults(faultsOf(parsed.error, data)) };
  };
};
