interface Line {
  readonly line: number;
}

interface Entered extends Line {
  readonly entered?: number;
}

/** The line that an entry was first entered at: one that was put right is no newer reading. */
export const enteredAt = ({ line, entered = line }: Entered): number => entered;

/** Whether it was read after something was said; a typing mistake of an earlier reading that was put right was not. */
export const isSince = (entry: Entered, { line }: Line): boolean => enteredAt(entry) > line;

/** Whether it was there when something was said. */
export const wasThere = (entry: Entered, { line }: Line): boolean => enteredAt(entry) < line;
