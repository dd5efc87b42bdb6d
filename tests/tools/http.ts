import { Agent } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { FastifyInstance } from 'fastify';
import supertest from 'supertest';
import { type SetCookie, setCookieIn } from './set-cookie.ts';

/** A request of a test, over a real connection. */
export interface Asked {
  /** GET, unless something else is said. */
  readonly method?: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE' | 'HEAD' | 'OPTIONS';
  readonly url: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly cookies?: Readonly<Record<string, string>>;
  /** Bytes or text go as they are; anything else goes as JSON. */
  readonly payload?: string | Buffer | object;
}

/** What came back, whatever its status: tests of refusals read it as tests of answers do. */
export interface Answered {
  readonly statusCode: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly rawPayload: Buffer;
  readonly body: string;
  readonly cookies: readonly SetCookie[];
  json(): unknown;
}

const METHODS = {
  GET: 'get',
  POST: 'post',
  PUT: 'put',
  PATCH: 'patch',
  DELETE: 'delete',
  HEAD: 'head',
  OPTIONS: 'options',
} as const;

const connections = new Agent({ keepAlive: true });

/** The address the service listens on; it begins to on a free port of loopback when it does not yet. */
export async function addressOf(app: FastifyInstance): Promise<string> {
  if (!app.server.listening) await app.listen({ host: '127.0.0.1', port: 0 });
  const address: AddressInfo | string | null = app.server.address();
  if (typeof address !== 'object' || address === null) throw new Error('not listening');
  return `http://127.0.0.1:${address.port}`;
}

function bytesOf(payload: string | Buffer | object): Buffer {
  if (Buffer.isBuffer(payload)) return payload;
  return Buffer.from(typeof payload === 'string' ? payload : JSON.stringify(payload));
}

const isJson = (payload: Asked['payload']): boolean =>
  typeof payload === 'object' && !Buffer.isBuffer(payload);

function headersOf({ headers = {}, cookies, payload }: Asked): Record<string, string> {
  const cookie = Object.entries(cookies ?? {}).map(([name, value]) => `${name}=${value}`);
  return {
    // What is sent is looked at as it is, not unpacked on the way.
    'accept-encoding': 'identity',
    ...(isJson(payload) ? { 'content-type': 'application/json' } : {}),
    ...(cookie.length === 0 ? {} : { cookie: cookie.join('; ') }),
    ...headers,
  };
}

/** Sends a request to a service of this process and gives back its answer. */
export async function ask(app: FastifyInstance, asked: Asked | string): Promise<Answered> {
  const request = typeof asked === 'string' ? { url: asked } : asked;
  const sent = supertest(await addressOf(app))
    [METHODS[request.method ?? 'GET']](request.url)
    .agent(connections)
    .set(headersOf(request))
    .buffer(true)
    .parse((response, done) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () => done(null, Buffer.concat(parts)));
    });
  if (request.payload !== undefined) sent.serialize((bytes) => bytes).send(bytesOf(request.payload));
  const { status, headers, body } = await sent;
  // A HEAD has no body, and what was not parsed is no Buffer.
  const rawPayload = Buffer.isBuffer(body) ? body : Buffer.alloc(0);
  return {
    statusCode: status,
    headers,
    rawPayload,
    body: rawPayload.toString(),
    cookies: setCookieIn(headers['set-cookie']),
    json: () => JSON.parse(rawPayload.toString()),
  };
}
