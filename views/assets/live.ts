import { isAtEntry } from './live/begun.ts';
import { mergePage } from './live/merge.ts';
import { showPresence } from './live/presence.ts';
import { followStream } from './live/stream.ts';
import { tellLocalTime } from './local-time.ts';
import { benchOf } from './unsent/bench.ts';
import { tellEnded } from './unsent/ended.ts';
import { tellSignal } from './unsent/signal.ts';
import { learnStop, stopHeard } from './unsent/stops.ts';
import { STOP_SAID } from './unsent/tell.ts';

const DOWN = 'The line is down. Wait with sending; the page catches up by itself.';
const ENDED = 'This page is no longer open to you: sign in again.';
const TRY_AGAIN_MS = 2_000;

function say(text: string): void {
  const status = document.querySelector('#status');
  if (status !== null && status.textContent !== text) status.textContent = text;
}

/**
 * Keeps a page of a call as the other side sees it. The stream says only that something happened; the page
 * itself is fetched again and merged, so that what is shown is what a reload would show.
 */
export function keepLive(): void {
  const main = document.querySelector<HTMLElement>('main[data-live]');
  if (main === null) return;
  /** The builder's page says by itself that there is no signal. */
  const bench = benchOf(document.documentElement);
  const isBench = bench !== undefined;
  /** Set where this page answers a form: only what is beside the form is then brought up to date. */
  const beside = main.dataset.beside;
  const self = main.dataset.self ?? '';
  let fetching = false;
  let again = false;
  let down = false;
  let ended = false;
  let retry: ReturnType<typeof setTimeout> | undefined;

  async function fetched(): Promise<string | undefined> {
    // What somebody is at stays in front of them; what is next says where the call has gone on.
    const address =
      beside ??
      (isAtEntry() ? document.querySelector<HTMLElement>('main')?.dataset.at : undefined) ??
      location.href;
    const response = await fetch(address, { headers: { accept: 'text/html' }, cache: 'no-store' });
    if (response.redirected || [401, 403, 404, 410].includes(response.status)) return undefined;
    if (!response.ok) throw new Error('away for a moment');
    return response.text();
  }

  function caughtUp(entries: readonly string[]): void {
    const back = down ? ['The line is back; the page has caught up.'] : [];
    down = false;
    if (back.length + entries.length > 0) say([...back, ...entries].join(' '));
  }

  async function refresh(): Promise<void> {
    if (ended) return;
    again = fetching;
    if (fetching) return;
    fetching = true;
    try {
      const html = await fetched();
      if (html === undefined) {
        ended = true;
        stream.stop();
        // The builder's page says by itself that its link has ended.
        if (isBench) tellEnded();
        else say(ENDED);
      } else {
        tellSignal(true);
        caughtUp(mergePage(html, self, beside !== undefined));
        tellLocalTime();
        document.dispatchEvent(new Event('page-merged'));
      }
    } catch {
      lost();
      // The stream may have lived through this: then nothing else would ask again.
      clearTimeout(retry);
      retry = setTimeout(() => void refresh(), TRY_AGAIN_MS);
    } finally {
      fetching = false;
      if (again) void refresh();
    }
  }
  /** Should the page not come any more, the stop is known all the same. */
  async function hear(event: unknown): Promise<void> {
    const stop = bench?.link === undefined ? undefined : stopHeard(event, bench.link);
    if (stop === undefined) return;
    await learnStop(stop).catch(() => undefined);
    document.dispatchEvent(new Event(STOP_SAID));
  }
  function lost(): void {
    if (!down && !ended && !isBench) say(DOWN);
    if (!ended) tellSignal(false);
    down = true;
    // Nobody knows any more who is here; whoever is comes with the line.
    showPresence([]);
  }

  const stream = followStream(main.dataset.live ?? '', {
    entry: (event) => {
      void hear(event);
      void refresh();
    },
    presence: (people) => showPresence(people),
    lost,
    back: () => void refresh(),
    refused: () => void refresh(),
  });
  // A page that was kept on this device is older than what the stream tells of.
  if (document.documentElement.dataset.kept !== undefined) void refresh();
}
