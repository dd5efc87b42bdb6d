import { type InputFault, InputFaults, impossible } from '../../../shared/problems/faults.ts';

/** One spring of a nest, in SI. */
interface NestSpring {
  readonly rate: number;
  readonly freeLength: number;
  readonly solidHeight: number;
  /** Left out where it stands at the height of the nest. */
  readonly installedHeight?: number | undefined;
}

const impossibleAt = (pointer: string, detail: string): InputFault => ({
  pointer,
  code: 'impossible-input',
  detail,
});

/** The height each spring is installed at: its own, or that of the nest. */
type Installed = (spring: NestSpring) => number;

/** Where that height was entered. */
const pointerOf = ({ installedHeight }: NestSpring, own: string): string =>
  installedHeight === undefined ? '/installedHeight' : `${own}/installedHeight`;

/** Refuses springs that can't be, each of them: solid above free, or solid above the height they are installed at. */
export function refuseImpossibleSprings(springs: readonly NestSpring[], installed: Installed): void {
  const faults: InputFault[] = [];
  const blamed = new Set<string>();
  for (const [index, spring] of springs.entries()) {
    const own = `/springs/${index}`;
    if (spring.solidHeight > spring.freeLength) {
      const detail = 'the solid height is above the free length';
      faults.push(impossibleAt(`${own}/solidHeight`, detail), impossibleAt(`${own}/freeLength`, detail));
    } else if (spring.solidHeight > installed(spring)) {
      const detail = 'the solid height is above the installed height: the spring would not go in';
      const height = pointerOf(spring, own);
      faults.push(impossibleAt(`${own}/solidHeight`, detail));
      if (!blamed.has(height)) faults.push(impossibleAt(height, detail));
      blamed.add(height);
    }
  }
  if (faults.length > 0) throw new InputFaults(faults);
}

/** Refuses a lift that takes up all of a height, each height that it does that to, and the lift once. */
export function refuseLiftOverHeights(
  springs: readonly NestSpring[],
  installed: Installed,
  netLift: number,
): void {
  const heights = springs.flatMap((spring, index) =>
    installed(spring) > netLift ? [] : [pointerOf(spring, `/springs/${index}`)],
  );
  if (heights.length === 0) return;
  impossible([...new Set(heights), '/netLift'], 'the lift takes up the whole installed height of the spring');
}

/**
 * The load of one spring of a nest at a height; a spring shorter than the height stands loose.
 *
 * Equation: F = k·max(0, freeLength − height)
 *
 * @param height [m] height the spring is pressed to, above zero
 * @returns [N] not negative
 *
 * Validity: a linear spring.
 * Source: linear spring, J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), section 10-1.
 */
export function loadAt({ rate, freeLength }: NestSpring, height: number): number {
  return rate * Math.max(0, freeLength - height);
}

/**
 * Which spring of a nest goes solid first, and the room that is left before it does.
 *
 * Equation: margin = min over the springs of (installedHeight − netLift − solidHeight)
 *
 * @param springs [m] at least one
 * @param open [m] the height of each spring at full lift
 * @returns index [1], margin [m] (negative: its coils touch first); of equal rooms the taller solid height, then the first
 *
 * Source: definition, common practice, no published source.
 */
export function firstSolid(
  springs: readonly NestSpring[],
  open: Installed,
): { index: number; margin: number } {
  let first = { index: 0, margin: Number.POSITIVE_INFINITY, solidHeight: Number.NEGATIVE_INFINITY };
  for (const [index, spring] of springs.entries()) {
    const margin = open(spring) - spring.solidHeight;
    // Two solid heights a last figure apart can leave the same room: the taller goes first all the same.
    const isFirst =
      margin < first.margin || (margin === first.margin && spring.solidHeight > first.solidHeight);
    if (isFirst) first = { index, margin, solidHeight: spring.solidHeight };
  }
  return first;
}
