import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** WCAG 2.2, levels A and AA, as far as a program can tell. */
const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * Only what is wrong is written down, and nothing is looked for in frames: otherwise each look took three times as
 * long (1.7 s for a step of a call, against .6 s).
 */
const builder = (page: Page) =>
  new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode();

/** Colours are told by what lies under each text, which takes longest. */
export type Colours = 'too' | 'alone' | 'left out';

/** What breaks the rules of access on the page, each fault with the elements it is in. */
export async function axeFaults(page: Page, colours: Colours = 'too'): Promise<string[]> {
  if (page.frames().length > 1) throw new Error('a frame on the page, which would not be looked into');
  const axe = builder(page);
  if (colours === 'alone') axe.withRules(['color-contrast']);
  else axe.withTags(LEVELS);
  if (colours === 'left out') axe.disableRules('color-contrast');
  const { violations } = await axe.analyze();
  return violations.map((fault) => `${fault.id}: ${fault.nodes.map((node) => node.html).join(' | ')}`);
}
