import type { FastifyReply } from 'fastify';
import type { Sendable } from '../../shared/schemas/answer.ts';
import type { AnswerCheck } from '../web/check-answers.ts';
import { LIVE_EVENTS, type LiveEvents } from './live-events.ts';

/** An answer that stays open and carries server-sent events (WHATWG HTML, section 9.2). */
export interface EventStream {
  /** `id` is what a client sends back as Last-Event-ID after a lost connection. */
  event<Name extends keyof LiveEvents>(name: Name, data: Sendable<LiveEvents[Name]>, id?: number): void;
  /** A comment keeps a quiet line open past proxies that end it; answers whether the client still reads. */
  comment(text: string): boolean;
  /** Whether the client is so far behind that more would only pile up here; `onRoom` tells when it has read. */
  isFull(): boolean;
  onRoom(room: () => void): void;
  onClose(closed: () => void): void;
  end(): void;
  /** Ends the connection itself: for a client that takes nothing any more. */
  cut(): void;
}

/** A client waits this long before it opens a lost stream again. */
const RETRY_MS = 1_000;

/** Takes the answer out of the framework's hands and begins the stream. */
export function openEventStream(reply: FastifyReply, check?: AnswerCheck): EventStream {
  const { raw } = reply;
  reply.hijack();
  raw.on('error', () => raw.destroy());
  const headers = Object.fromEntries(
    Object.entries(reply.getHeaders()).filter(
      (pair): pair is [string, string] => typeof pair[1] === 'string',
    ),
  );
  raw.writeHead(200, {
    ...headers,
    'content-type': 'text/event-stream; charset=utf-8',
    'cache-control': 'no-store',
    // Proxies that gather an answer before they pass it on would hold every event back.
    'x-accel-buffering': 'no',
  });
  const write = (text: string) => {
    if (!raw.writableEnded && !raw.destroyed) raw.write(text);
  };
  let waiting = false;
  write(`retry: ${RETRY_MS}\n\n`);
  return {
    event(name, data, id) {
      const line = id === undefined ? '' : `id: ${id}\n`;
      const json = JSON.stringify(data);
      check?.(`live ${name}`, LIVE_EVENTS[name], json);
      write(`${line}event: ${name}\ndata: ${json}\n\n`);
    },
    comment(text) {
      const reads = !raw.writableNeedDrain;
      if (reads) write(`: ${text}\n\n`);
      return reads;
    },
    isFull: () => raw.writableNeedDrain,
    onRoom(room) {
      if (waiting) return;
      waiting = true;
      raw.once('drain', () => {
        waiting = false;
        room();
      });
    },
    onClose(closed) {
      raw.on('close', closed);
      // The client may have gone while its request was looked at.
      if (raw.destroyed || raw.socket === null || raw.socket.destroyed) queueMicrotask(closed);
    },
    end: () => raw.end(),
    cut: () => raw.destroy(),
  };
}
