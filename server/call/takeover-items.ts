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

/** The unit of a plain amount, behind the number of its cylinder too, and in brackets with why it was struck. */
const unitOf = (text: string): string | undefined =>
  /^(?:\(|\d+: )?[−-]?[\d.]+ (in|mm|lb|N)(?=$|:)/.exec(text)?.[1];

/** `.847, .848, .847 in`: the unit once, behind the last, where all share it; else each keeps its own. */
export function listed(texts: readonly string[], between = ', '): string {
  const units = new Set(texts.map(unitOf));
  if (units.size > 1 || units.has(undefined)) return texts.join(between);
  return texts.map((text, index) => (index === texts.length - 1 ? text : withoutUnit(text))).join(between);
}
