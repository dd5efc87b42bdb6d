import type { BrowserContextOptions, Page } from 'playwright-core';
import { type Hand, keysOnly, pointer } from './hand.ts';
import { PHONE } from './two-sides.ts';

/** In how many ways a call must be possible; every call of these tests is played in each. */
export interface Mode {
  readonly name: string;
  readonly desk: BrowserContextOptions;
  readonly bench: BrowserContextOptions;
  /** The hand of the person at the desk; the builder always has a finger. */
  deskHand(page: Page): Hand;
}

export const MODES: readonly Mode[] = [
  { name: 'as usual', desk: {}, bench: PHONE, deskHand: pointer },
  {
    name: 'scripts off, in the dark, no mouse at the desk and the narrowest phone',
    desk: { javaScriptEnabled: false, colorScheme: 'dark' },
    bench: { viewport: { width: 320, height: 640 }, javaScriptEnabled: false, colorScheme: 'dark' },
    deskHand: keysOnly,
  },
];
