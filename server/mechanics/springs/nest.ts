import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';

/** One spring of a nest, in SI. */
interface NestSpring {
  readonly rate: number;
  readonly freeLength: number;
  readonly solidHeight: number;
}

const impossibleAt = (pointer: string, detail: string): InputFault => ({
  pointer,
  code: 'impossible-input',
  detail,
});

/** Refuses springs that can't be, each of them: solid above free, or solid above the height they are installed at. */
export function refuseImpossibleSprings(springs: readonly NestSpring[], installedHeight: number): void {
  const faults: InputFault[] = [];
  let blamedHeight = false;
  for (const [index, { freeLength, solidHeight }] of springs.entries()) {
    const own = `/springs/${index}`;
    if (solidHeight > freeLength) {
      const detail = 'the solid height is above the free length';
      faults.push(impossibleAt(`${own}/solidHeight`, detail), impossibleAt(`${own}/freeLength`, detail));
    } else if (solidHeight > installedHeight) {
      const detail = 'the solid height is above the installed height: the spring would not go in';
      faults.push(impossibleAt(`${own}/solidHeight`, detail));
      if (!blamedHeight) faults.push(impossibleAt('/installedHeight', detail));
      blamedHeight = true;
    }
  }
  if (faults.length > 0) throw new InputFaults(faults.slice(0, 100));
}

/**
 * The load of one spring of a nest at a height; a spring shorter than the height stands loose.
 *
 * Equation: F = k·max(0, freeLength − height)
 *
 * @param height [m] height the nest is pressed to, above zero
 * @returns [N] not negative
 *
 * Validity: linear springs that stand on the same seat under the same retainer, no steps between them.
 * Source: linear spring, J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), section 10-1.
 */
export function loadAt({ rate, freeLength }: NestSpring, height: number): number {
  return rate * Math.max(0, freeLength - height);
}

/** Which spring of a nest goes solid first: the tallest when solid, the first of equals. */
export function firstSolid(springs: readonly NestSpring[]): { index: number; solidHeight: number } {
  let first = { index: 0, solidHeight: Number.NEGATIVE_INFINITY };
  for (const [index, { solidHeight }] of springs.entries()) {
    if (solidHeight > first.solidHeight) first = { index, solidHeight };
  }
  return first;
}
