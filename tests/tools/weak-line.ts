import { request as ask, createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';

/**
 * How a telephone's line treats what is posted over it: `up` carries it; `down` carries nothing at all; `cut` breaks
 * while it is being sent, before the service has it; `answer lost` carries it there, and breaks before the answer;
 * `posts alone` carries what is posted and its answer, and no page; `hangs` takes everything and never answers.
 */
export type LineState = 'up' | 'down' | 'cut' | 'answer lost' | 'posts alone' | 'hangs';

export interface WeakLine {
  readonly base: string;
  set(state: LineState): void;
  /** What was posted and reached the service, in order. */
  readonly arrived: readonly string[];
  close(): Promise<void>;
}

/** A line to a service, over plain connections, that can be made to fail. */
export async function weakLine(to: string): Promise<WeakLine> {
  const target = new URL(to);
  let state: LineState = 'up';
  const sockets = new Set<Socket>();
  const arrived: string[] = [];

  /** As the line was when it was begun: what is on its way is not helped by a line that mends. */
  function carry(request: IncomingMessage, response: ServerResponse, body: Buffer, then: LineState): void {
    const { method, url, headers } = request;
    const onward = ask({
      host: target.hostname,
      port: target.port,
      method,
      path: url,
      headers,
      agent: false,
    });
    onward.on('error', () => response.destroy());
    onward.on('response', (answer) => {
      if (method === 'POST' && then === 'answer lost') {
        answer.resume().once('end', () => response.destroy());
        return;
      }
      response.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(response);
    });
    response.on('close', () => onward.destroy());
    if (method === 'POST') arrived.push(body.toString());
    onward.end(body);
  }

  const server = createServer((request, response) => {
    const then = state;
    if (then === 'down' || (then === 'posts alone' && request.method !== 'POST'))
      return void response.destroy();
    if (then === 'hangs') return void request.resume();
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('error', () => response.destroy());
    request.on('end', () => {
      if (request.method === 'POST' && then === 'cut') response.destroy();
      else carry(request, response, Buffer.concat(parts), then);
    });
  });
  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.once('close', () => sockets.delete(socket));
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address: AddressInfo | string | null = server.address();
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  const breakAll = () => {
    for (const socket of sockets) socket.destroy();
  };
  return {
    base: `http://127.0.0.1:${port}`,
    arrived,
    set(next) {
      state = next;
      if (next === 'down' || next === 'posts alone') breakAll();
    },
    async close() {
      breakAll();
      await new Promise<void>((done) => server.close(() => done()));
    },
  };
}
