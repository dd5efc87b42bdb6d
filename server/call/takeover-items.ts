import type { CardItem } from '../../views/pages/pages.ts';
/** Said where something is not known yet. */
export const NOT_YET = 'not on record yet';

/** What a step has to say to a colleague who takes the call over. */
export interface TakeoverItem extends CardItem {
  /** Raw readings as they were read; marks word for word; or what a call about this step must not lose. */
  readonly card: 'raw' | 'marks' | 'swaps' | 'of-goal' | 'of-any-goal' | 'limits';
}

/** A quantity as it is told, without its unit. */
export const withoutUnit = (text: string): string => text.replaceAll(/ (?:in|mm|lb|N)\b/g, '');

/** `.847, .848, .847 in`: the unit once, behind the last of those that share it. */
export const listed = (texts: readonly string[], between = ', '): string =>
  texts.map((text, index) => (index === texts.length - 1 ? text : withoutUnit(text))).join(between);
