import type { CardItem } from '../../views/pages/pages.ts';
/** Said where something is not known yet. */
export const NOT_YET = 'not on record yet';

/** What a step has to say to a colleague who takes the call over. */
export interface TakeoverItem extends CardItem {
  /** Raw readings as they were read; marks word for word; or what a call about this step must not lose. */
  readonly card: 'raw' | 'marks' | 'swaps' | 'of-goal' | 'of-any-goal' | 'limits';
}

const UNIT = /(?<=\d) (in|mm|lb|N)\b/;

/** A quantity as it is told, without its unit. */
export const withoutUnit = (text: string): string => text.replaceAll(new RegExp(UNIT, 'g'), '');

const unitIn = (text: string | undefined): string | undefined => UNIT.exec(text ?? '')?.[1];

/** `.847, .848, .847 in`: the unit once, behind the last of those that share it; a reading in another keeps its own. */
export const listed = (texts: readonly string[], between = ', '): string =>
  texts
    .map((text, index) => {
      const unit = unitIn(text);
      const next = texts.slice(index + 1).find((other) => unitIn(other) !== undefined);
      return unit !== undefined && unit === unitIn(next) ? withoutUnit(text) : text;
    })
    .join(between);
