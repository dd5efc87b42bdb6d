import { createHash } from 'node:crypto';
import { Transform } from 'node:stream';

export interface Meter {
  readonly stream: Transform;
  /** SHA-256 of all that went through. */
  digest(): string;
}

/** Lets everything through, and says afterwards what it was. */
export function meter(): Meter {
  const hash = createHash('sha256');
  const stream = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      hash.update(chunk);
      done(null, chunk);
    },
  });
  return { stream, digest: () => hash.digest('hex') };
}
