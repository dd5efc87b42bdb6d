interface LogPlace {
  /** `2026-03-14` */
  readonly day: string;
  /** The number of the first entry: a line that was put right keeps its place. */
  readonly entered: number;
}

/** Lines of a lash log by the days that they are of, then as they were first entered. */
export const inLogOrder = <Line>(lines: readonly Line[], placeOf: (line: Line) => LogPlace): Line[] =>
  lines.toSorted((one, other) => {
    const [a, b] = [placeOf(one), placeOf(other)];
    return a.day === b.day ? a.entered - b.entered : a.day < b.day ? -1 : 1;
  });
