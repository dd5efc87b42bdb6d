import { get, type IncomingMessage } from 'node:http';

export interface Received {
  readonly name: string;
  readonly data: unknown;
  readonly id: number | undefined;
  /** When it came, by performance.now(). */
  readonly at: number;
}

export interface StreamClient {
  readonly status: number;
  readonly headers: IncomingMessage['headers'];
  /** Everything that has come so far. */
  readonly events: readonly Received[];
  readonly comments: readonly string[];
  readonly retry: number | undefined;
  /** The sequence numbers of the entries, in the order in which they came. */
  seqs(): number[];
  /** Waits until what has come so far satisfies `enough`; rejects when the stream ends before that. */
  until(enough: (client: StreamClient) => boolean): Promise<void>;
  /** Waits for the end of the stream. */
  readonly over: Promise<void>;
  /** Cuts the connection as a lost network does: nothing is said to the other side first. */
  cut(): void;
}

function field(block: string, name: string): string | undefined {
  return block
    .split('\n')
    .find((line) => line.startsWith(`${name}: `))
    ?.slice(name.length + 2);
}

/** Opens a stream of server-sent events and takes it apart by the rules of WHATWG HTML, section 9.2.6. */
export function openStream(url: string, headers: Record<string, string>): Promise<StreamClient> {
  return new Promise((resolve, reject) => {
    const request = get(url, { headers, agent: false }, (answer) => {
      const events: Received[] = [];
      const comments: string[] = [];
      const waiting = new Set<() => void>();
      let retry: number | undefined;
      let rest = '';
      let ended = false;
      const look = () => {
        for (const each of [...waiting]) each();
      };
      function take(block: string): void {
        if (block.startsWith(':')) comments.push(block.slice(1).trim());
        retry = field(block, 'retry') === undefined ? retry : Number(field(block, 'retry'));
        const data = field(block, 'data');
        if (data === undefined) return;
        const id = field(block, 'id');
        events.push({
          name: field(block, 'event') ?? 'message',
          data: JSON.parse(data),
          id: id === undefined ? undefined : Number(id),
          at: performance.now(),
        });
      }
      const over = new Promise<void>((done) => {
        answer.on('close', () => {
          ended = true;
          look();
          done();
        });
      });
      answer.setEncoding('utf8');
      answer.on('error', () => undefined);
      answer.on('data', (part: string) => {
        rest += part;
        const blocks = rest.split('\n\n');
        rest = blocks.pop() ?? '';
        for (const block of blocks) take(block);
        look();
      });
      const client: StreamClient = {
        status: answer.statusCode ?? 0,
        headers: answer.headers,
        events,
        comments,
        get retry() {
          return retry;
        },
        seqs: () => events.flatMap((event) => (event.id === undefined ? [] : [event.id])),
        over,
        until: (enough) =>
          new Promise((met, unmet) => {
            const each = () => {
              if (enough(client)) met();
              else if (ended) unmet(new Error(`the stream ended after ${JSON.stringify(events)}`));
              else return;
              waiting.delete(each);
            };
            waiting.add(each);
            each();
          }),
        cut: () => request.destroy(),
      };
      resolve(client);
    });
    request.on('error', reject);
  });
}
