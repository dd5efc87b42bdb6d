import { Agent, request } from 'node:http';

const agent = new Agent({ keepAlive: true, maxSockets: 1 });

export interface Answer {
  readonly status: number;
  readonly text: string;
}

export interface Sent {
  readonly port: number;
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** One request on a kept connection; the answer is read to its end, and must have the status. */
export function send(status: number, { port, method, path, headers = {}, body }: Sent): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const options = { agent, host: '127.0.0.1', port, method, path, headers: { ...headers } };
    const outgoing = request(options, (incoming) => {
      const parts: Buffer[] = [];
      incoming.on('data', (part: Buffer) => parts.push(part));
      incoming.on('end', () => {
        const text = Buffer.concat(parts).toString();
        if (incoming.statusCode === status) resolve({ status, text });
        else reject(new Error(`${path} answered ${incoming.statusCode}: ${text.slice(0, 300)}`));
      });
      incoming.on('error', reject);
    });
    outgoing.on('error', reject);
    outgoing.end(body);
  });
}

/** Lets the process end. */
export function hangUp(): void {
  agent.destroy();
}

/** The port that a server listens on. */
export function portOf(server: { address(): string | { port: number } | null }): number {
  const address = server.address();
  if (typeof address !== 'object' || address === null) throw new Error('nothing listens');
  return address.port;
}
