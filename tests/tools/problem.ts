import { expect } from 'vitest';
import { z } from 'zod';
import { problemSchema } from '../../server/web/api-schemas.ts';

export type Told = z.output<typeof problemSchema>;

interface Response {
  readonly statusCode: number;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
}

/**
 * Holds an answer to RFC 9457: media type, members, and a `status` member that is the status of the answer
 * (section 3.1.2); answers the problem.
 */
export function problemIn(response: Response, status: number, code: string): Told {
  const shown = `${response.statusCode} ${response.body.slice(0, 300)}`;
  expect(String(response.headers['content-type']), shown).toMatch(/^application\/problem\+json/);
  const problem = problemSchema.strict().parse(JSON.parse(response.body));
  expect({ status: response.statusCode, code: problem.code }, shown).toEqual({ status, code });
  expect(problem.status).toBe(response.statusCode);
  expect(problem.type).toBe(`/problems/${problem.code}`);
  expect(z.uuid().safeParse(problem.requestId).success, 'the problem names its request').toBe(true);
  return problem;
}

/** What two problems have in common when they tell the same; the request's own id differs. */
export function withoutRequest(problem: Told): Omit<Told, 'requestId'> {
  const { requestId: _, ...rest } = problem;
  return rest;
}
