import type { Bench } from './bench.ts';
import { put } from './markup.ts';
import { SEND_NOW } from './send-again.ts';
import { changeEntry, type Entry } from './store.ts';

const MAY_BE_THERE =
  'It may have arrived under the other link: look for it on the tape first. Press once more to send it all the same.';
const SEND = 'Send under this link';

/** Typed under another link, such as one that has ended, for the build that is open here. */
export const isOfBuild = ({ link, build }: Entry, bench: Bench): boolean =>
  bench.link !== undefined && link !== bench.link && build !== undefined && build === bench.build;

/**
 * Offers to send it under the link that is open. It never goes by itself; what may have arrived asks for a second
 * press, since a key counts within one link alone.
 */
export function offerThisLink(item: Element, entry: Entry, bench: Bench, changed: () => void): void {
  const { link } = bench;
  const press = item.querySelector<HTMLButtonElement>('button[data-do=send]');
  if (press === null || link === undefined || !isOfBuild(entry, bench)) return;
  let warned = !entry.tried;
  press.hidden = false;
  press.textContent = SEND;
  press.addEventListener('click', () => {
    if (!warned) {
      warned = true;
      put(item, '.unsent-why', MAY_BE_THERE);
      return;
    }
    changeEntry(entry.id, { link, state: 'waiting', refusal: '', held: false, arrived: false }).then(
      () => document.dispatchEvent(new Event(SEND_NOW)),
      changed,
    );
  });
}
