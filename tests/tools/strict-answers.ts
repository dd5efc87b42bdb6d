import { z } from 'zod';
import type { AnswerCheck } from '../../server/web/check-answers.ts';
import { jsonSchemaOf } from '../../server/web/openapi.ts';
import { memberOf } from '../../shared/member.ts';

const readers = new WeakMap<z.ZodType, z.ZodType>();

/** An object that leaves open which keys it may have would let every answer pass. */
function refuseOpen(part: unknown): void {
  if (typeof part !== 'object' || part === null) return;
  if (memberOf(part, 'type') === 'object' && !('additionalProperties' in part))
    throw new Error(`a published object does not say which keys it may have: ${JSON.stringify(part)}`);
  for (const inner of Object.values(part)) refuseOpen(inner);
}

/** The schema as the OpenAPI document has it, read back from there: quantities as objects, no other keys. */
function readerOf(schema: z.ZodType): z.ZodType {
  const known = readers.get(schema);
  if (known !== undefined) return known;
  const published = jsonSchemaOf(schema, 'output');
  refuseOpen(published);
  const reader = z.fromJSONSchema(published);
  readers.set(schema, reader);
  return reader;
}

/** Holds a JSON answer to its published schema: no unknown key at any depth, none missing, every type right. */
export function faultsOfAnswer(schema: z.ZodType, json: string): string[] {
  const read = readerOf(schema).safeParse(JSON.parse(json));
  return read.success ? [] : z.prettifyError(read.error).split('\n');
}

/** A check that holds faulty answers back and remembers them, so that none is lost with its request. */
export function strictAnswers(): { readonly check: AnswerCheck; readonly faults: readonly string[] } {
  const faults: string[] = [];
  return {
    faults,
    check(route, schema, json) {
      const found = schema === undefined ? ['no schema is declared for it'] : faultsOfAnswer(schema, json);
      if (found.length === 0) return;
      faults.push(`${route}: ${found.join(' ')}`);
      throw new Error(faults.at(-1));
    },
  };
}
