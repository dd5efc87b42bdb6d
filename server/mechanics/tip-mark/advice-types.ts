/** The one direction that follows from all marks of a valve. */
export type Advice =
  /** `best`: the widths are least there, and what it is over the ordinary may be the ink line's own width. */
  | {
      readonly how: 'keep';
      readonly at?: number;
      readonly best?: true;
      /** Off the middle, and the way to it makes the mark wider than is ordinary: width goes first. */
      readonly offCentre?: true;
    }
  /** Nothing of a length is told while the width has no word: the least sweep is not known. */
  | { readonly how: 'width-first' }
  /** The widths are least there, and no setting makes it ordinary. */
  | { readonly how: 'still-wide'; readonly at: number; readonly width: number }
  | {
      readonly how: 'change';
      /** Longer, or higher. */
      readonly way: 'up' | 'down';
      readonly by: number;
      readonly to?: number;
      /** A step to try, where the marks' places point, where their widths are least, or the way that is left to try. */
      readonly found: 'step' | 'line' | 'least' | 'other-way';
      readonly from: 'width' | 'place';
      /** The place asks for the other way; width goes first. */
      readonly placeAgainst: boolean;
    }
  | { readonly how: 'both-ways' }
  | {
      readonly how: 'contradict';
      readonly because: 'same-setting' | 'moved-back' | 'sides-swapped' | 'no-one-least';
    };
