/** Where the screw that sets preload or lash sits. */
export const ADJUSTER_MOUNTS = ['stud-nut', 'cup-screw', 'valve-end-screw'] as const;
type AdjusterMount = (typeof ADJUSTER_MOUNTS)[number];

/**
 * How far the lifter's seat is pressed for each length the screw advances, the valve tip standing still.
 *
 * Equation: stud nut (the pivot comes down): 1 + 1/r; screw at the cup: 1; screw at the valve: 1/r
 *
 * @param mount [1] where the screw sits
 * @param ratio [1] rocker ratio r, above zero
 * @returns [1] travel of the seat over travel of the screw
 *
 * Validity: small turns of a rocker whose tip, pivot and cup lie nearly in line; .991 to 1.009 of it on usual rockers.
 * Source: derived here, by the lever about the valve tip (stud nut) and about the pivot (screws).
 */
export function seatPerAdvance(mount: AdjusterMount, ratio: number): number {
  switch (mount) {
    case 'stud-nut':
      return 1 + 1 / ratio;
    case 'cup-screw':
      return 1;
    case 'valve-end-screw':
      return 1 / ratio;
  }
}
