import pg from 'pg';

/** A connection that listens on one channel, opened again whenever it is lost. */
interface Listener {
  close(): Promise<void>;
}

interface Listening {
  /** What a notification carried. */
  heard(payload: string): void;
  /** Listening has begun, or begun again: whatever came in between was not heard. */
  begun(): void;
  say(message: string): void;
}

const RECONNECT_MS = 500;
/** A connection can die without a word; this often it must answer. */
const CHECK_MS = 15_000;
const ANSWER_MS = 5_000;

/** One connection from its opening to its loss. */
async function listenOnce(
  url: string,
  channel: string,
  { heard, begun }: Listening,
  lost: (error: Error | undefined) => void,
): Promise<pg.Client> {
  const client = new pg.Client({
    connectionString: url,
    connectionTimeoutMillis: ANSWER_MS,
    query_timeout: ANSWER_MS,
    keepAlive: true,
    application_name: 'benchcall live',
  });
  client.on('notification', ({ payload }) => heard(payload ?? ''));
  client.on('error', lost);
  client.on('end', () => lost(undefined));
  await client.connect();
  await client.query(`listen ${channel}`);
  begun();
  return client;
}

export function openListener(url: string, channel: string, listening: Listening): Listener {
  let client: pg.Client | undefined;
  let closed = false;
  let retry: NodeJS.Timeout | undefined;

  function again(): void {
    if (closed || retry !== undefined) return;
    retry = setTimeout(() => {
      retry = undefined;
      listen();
    }, RECONNECT_MS);
    retry.unref();
  }

  function listen(): void {
    let over = false;
    const lost = (error: Error | undefined) => {
      if (over || closed) return;
      over = true;
      client?.end().catch(() => undefined);
      client = undefined;
      if (error !== undefined) listening.say(`live updates lost their connection: ${error.message}`);
      again();
    };
    listenOnce(url, channel, listening, lost).then(
      (opened) => {
        if (over || closed) opened.end().catch(() => undefined);
        else client = opened;
      },
      () => lost(undefined),
    );
  }

  listen();
  const check = setInterval(() => {
    const checked = client;
    checked?.query('select 1').catch(() => {
      // Its end is told by its own event, which opens the next one.
      if (checked === client) checked.end().catch(() => undefined);
    });
  }, CHECK_MS);
  check.unref();

  return {
    async close() {
      closed = true;
      clearInterval(check);
      clearTimeout(retry);
      await client?.end().catch(() => undefined);
    },
  };
}
