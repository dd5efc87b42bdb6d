import { Failure } from '../problems/failure.ts';
import { parseJson } from './json-body.ts';

/** Up to here a body is read at once: that takes less than the way to another thread. */
const AT_ONCE = 16 * 1024;

/** A large JSON body as it came: whoever uses it reads it where that holds up nobody. */
export class UnreadBody {
  readonly bytes: Buffer;
  constructor(bytes: Buffer) {
    this.bytes = bytes;
  }
}

/** A small body read, a large one as it came. */
export const readOrKeep = (bytes: Buffer): unknown =>
  bytes.length > AT_ONCE ? new UnreadBody(bytes) : parseJson(bytes);

/** A refusal as it goes between threads, where a class does not go. */
export interface Refusal {
  readonly code: Failure['code'];
  readonly detail: string;
}

/** The body read, or what is wrong with it. */
export function readBytes(bytes: Uint8Array): { readonly body: unknown } | { readonly refusal: Refusal } {
  try {
    return { body: parseJson(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)) };
  } catch (error) {
    if (!(error instanceof Failure)) throw error;
    return { refusal: { code: error.code, detail: error.detail } };
  }
}
