import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { defined } from '../../../shared/defined.ts';
import { memberOf } from '../../../shared/member.ts';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { Failure, RefusedWith } from '../../problems/failure.ts';
import { PROBLEMS, type ProblemCode } from '../../problems/registry.ts';
import { wantsOutcomeAlone } from './outcome-alone.ts';
import { loggablePath } from './request-log.ts';

/** An RFC 9457 problem as it is sent. */
export interface Problem {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly code: ProblemCode;
  readonly detail?: string;
  readonly requestId: string;
  readonly errors?: InputFaults['faults'];
  readonly questions?: readonly object[];
  /** The line of the record that it is about. */
  readonly line?: number;
}

/** Codes of the framework for requests that never reached a route of ours. */
const FRAMEWORK: Record<string, ProblemCode> = {
  FST_ERR_CTP_BODY_TOO_LARGE: 'body-too-large',
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'media-type-not-taken',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'invalid-json',
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: 'bad-request',
  FST_ERR_BAD_URL: 'bad-request',
  FST_ERR_MAX_PARAM_LENGTH: 'url-too-long',
};

function codeOf(error: unknown): ProblemCode {
  if (error instanceof Failure) return error.code;
  if (error instanceof InputFaults) return 'invalid-input';
  const code = memberOf(error, 'code');
  const known = typeof code === 'string' ? FRAMEWORK[code] : undefined;
  if (known !== undefined) return known;
  const status = memberOf(error, 'statusCode');
  if (status === 503) return 'service-busy';
  return typeof status === 'number' && status >= 400 && status < 500 ? 'bad-request' : 'internal-error';
}

/** How much an address takes, where more was sent. */
const tooLarge = (code: ProblemCode, { bodyLimit }: FastifyRequest['routeOptions']): string | undefined =>
  code === 'body-too-large' && bodyLimit !== undefined
    ? `this address takes ${Math.floor(bodyLimit / 1024)} kB at the most`
    : undefined;

/** The problem that a client is told of; the text of an internal error stays here. */
function problemOf(error: unknown, request: FastifyRequest): Problem {
  if (error instanceof RefusedWith)
    return { ...problemOf(error.refusal, request), questions: error.questions };
  const code = codeOf(error);
  const { status, title } = PROBLEMS[code];
  const base = { type: `/problems/${code}`, title, status, code, requestId: request.id };
  if (error instanceof Failure) return { ...base, detail: error.detail, ...defined({ line: error.line }) };
  if (error instanceof InputFaults) {
    const count = error.faults.length;
    return {
      ...base,
      detail: count === 1 ? '1 fault in the input' : `${count} faults in the input`,
      errors: error.faults,
    };
  }
  return { ...base, ...defined({ detail: tooLarge(code, request.routeOptions) }) };
}

export async function sendProblem(reply: FastifyReply, error: unknown): Promise<FastifyReply> {
  const problem = problemOf(error, reply.request);
  const refusal = error instanceof RefusedWith ? error.refusal : error;
  if (refusal instanceof Failure) reply.headers(refusal.headers);
  return reply.code(problem.status).type('application/problem+json').send(JSON.stringify(problem));
}

/** Logs what only we may know. */
function logFailure(request: FastifyRequest, error: unknown, status: number): void {
  const what = { method: request.method, path: loggablePath(request.url), status };
  if (status >= 500) request.log.error({ ...what, err: error }, 'request failed');
  else request.log.info(what, 'request refused');
}

/** An address the service answers to, as it was declared. */
interface DeclaredRoute {
  readonly method: string;
  readonly url: string;
  /** What its body is read by, where it takes one of JSON. */
  readonly body: unknown;
}

declare module 'fastify' {
  interface FastifyInstance {
    /** Every route, in the order of declaration; tests walk it. */
    readonly declaredRoutes: readonly DeclaredRoute[];
  }
}

type PageError = (request: FastifyRequest, reply: FastifyReply, problem: Problem) => Promise<FastifyReply>;

/** JSON routes answer with problem details, pages with an error page; both from the same registry. */
export const problems = fp(
  (app: FastifyInstance, options: { pageError: PageError }, done) => {
    const takesProblem = (request: FastifyRequest) =>
      request.url.startsWith('/api/') ||
      request.url.startsWith('/live/') ||
      request.url.startsWith('/health') ||
      wantsOutcomeAlone(request);
    const answer = async (request: FastifyRequest, reply: FastifyReply, error: unknown) => {
      const problem = problemOf(error, request);
      logFailure(request, error, problem.status);
      if (takesProblem(request)) return sendProblem(reply, error);
      if (error instanceof Failure) reply.headers(error.headers);
      return options.pageError(request, reply, problem);
    };
    app.setErrorHandler<FastifyError>((error, request, reply) => answer(request, reply, error));

    const patterns: (DeclaredRoute & { readonly matches: RegExp })[] = [];
    app.decorate('declaredRoutes', patterns);
    app.addHook('onRoute', (route) => {
      const escaped = route.url.replace(/[.+?^${}()|[\]\\]/g, '\\$&').replace(/:[A-Za-z]+/g, '[^/]+');
      const matches = new RegExp(`^${escaped.replace(/\*$/, '.*')}/?$`);
      for (const method of [route.method].flat())
        patterns.push({ matches, method, url: route.url, body: route.schema?.body });
    });
    app.setNotFoundHandler((request, reply) => {
      const path = request.url.split('?')[0] ?? '';
      const allowed = [
        ...new Set(patterns.filter((each) => each.matches.test(path)).map((each) => each.method)),
      ];
      const error =
        allowed.length > 0 && !allowed.includes(request.method)
          ? new Failure('method-not-allowed', `${request.method} is not taken here`, {
              headers: { allow: allowed.join(', ') },
            })
          : new Failure('not-found', 'nothing is here');
      return answer(request, reply, error);
    });
    done();
  },
  { name: 'problems' },
);
