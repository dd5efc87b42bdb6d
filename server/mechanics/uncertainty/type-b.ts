/*
 * Standard uncertainties of what is known without repeated readings (JCGM 100:2008, 4.3), each from the
 * half-width of what it can lie within.
 */

/** Anywhere within ± halfWidth alike (4.3.7). */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/** Within ± halfWidth, the middle likeliest (4.3.9). */
export const triangular = (halfWidth: number): number => halfWidth / Math.sqrt(6);

/** Swinging within ± halfWidth as a sine (H.1.3.4). */
export const uShaped = (halfWidth: number): number => halfWidth / Math.sqrt(2);

/** A display that shows whole steps (F.2.2.1), the step and not its half. */
export const digital = (step: number): number => step / Math.sqrt(12);

/** Degrees of freedom of an uncertainty itself trusted to within the relative amount `doubt` (G.4.2). */
export const trustedTo = (doubt: number): number => 1 / (2 * doubt ** 2);
