import type { Socket } from 'node:net';
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import { Failure } from '../../problems/failure.ts';
import { PROBLEMS, type ProblemCode } from '../../problems/registry.ts';
import { sendProblem } from './problems.ts';

const BROKEN: Readonly<Record<string, ProblemCode>> = {
  HPE_HEADER_OVERFLOW: 'headers-too-large',
  ERR_HTTP_REQUEST_TIMEOUT: 'request-too-slow',
};

/** Requests too broken to reach a route: the answer is written to the socket in the shape that every answer has. */
export function answerBrokenRequest(error: NodeJS.ErrnoException, socket: Socket): void {
  if (!socket.writable || error.code === 'ECONNRESET') {
    socket.destroy();
    return;
  }
  const code = BROKEN[error.code ?? ''] ?? 'bad-request';
  const { status, title } = PROBLEMS[code];
  const body = JSON.stringify({
    type: `/problems/${code}`,
    title,
    status,
    code,
    requestId: crypto.randomUUID(),
  });
  socket.end(
    `HTTP/1.1 ${status} ${title}\r\ncontent-type: application/problem+json\r\ncontent-length: ${Buffer.byteLength(body)}\r\nconnection: close\r\n\r\n${body}`,
  );
}

/** Addresses the router itself can't read, such as a broken %-escape. */
export function frameworkErrors(error: FastifyError, _request: FastifyRequest, reply: FastifyReply): void {
  const code = error.code === 'FST_ERR_MAX_PARAM_LENGTH' ? 'url-too-long' : 'bad-request';
  void sendProblem(reply, new Failure(code, 'the address can’t be read'));
}
