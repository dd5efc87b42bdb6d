import type { Evidence } from '../evidence.ts';

const SET_UP =
  'Say how it is measured (spring, lifter, lash), then read lobe lift and valve lift of one valve.';

/** One valve in a set-up of its own; where the sheet was read already, with what it does not bear. */
export function oneValve({ sheet }: Evidence): string {
  const lifts = sheet.filter(
    ({ standing, kind, arms }) => standing && kind === 'valve-lift' && arms === 'these',
  );
  if (lifts.length === 0) return SET_UP;
  return lifts.every(({ spring }) => spring === 'running')
    ? 'Put a light spring on one valve of the sheet, take its lash up to zero, and read its lobe lift and valve lift.'
    : 'Take the lash of one valve of the sheet up to zero, on a light spring, and read its lobe lift and valve lift.';
}
