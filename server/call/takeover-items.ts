/** One line of the takeover card. */
export interface CardItem {
  readonly text: string;
  readonly label?: string;
  readonly note?: string;
  readonly href?: string;
}

/** What a step has to say to a colleague who takes the call over. */
export interface TakeoverItem extends CardItem {
  /** Raw readings as they were read; marks word for word; or what a call about this step must not lose. */
  readonly card: 'raw' | 'marks' | 'of-goal';
}
