import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface OwnStopData {
  /** What the person said with it. */
  readonly said: string;
  /** Where, and since when. */
  readonly when: string;
  /** The desk's number, where it is known. */
  readonly phone?: string | undefined;
}

export const ownStop: Part<'/parts/own-stop'> = {
  name: 'own-stop',
  title: 'A stop the desk has not heard',
  purpose: 'On top of every page of the link while a stop that was said without a signal has not gone out.',
  template: '/parts/own-stop',
  examples: [
    {
      title: 'With a reason',
      data: {
        said: 'You said stop: “it binds a quarter turn after top”',
        when: 'On this phone, 10:41',
        phone: '555 0134',
      },
    },
    { title: 'Without a reason', data: { said: 'You said stop.', when: 'On this phone, 10:41' } },
    { title: 'Long text', data: { said: LONG, when: LONG, phone: LONG } },
    { title: 'Hostile text', data: { said: HOSTILE, when: HOSTILE, phone: HOSTILE } },
  ],
};
