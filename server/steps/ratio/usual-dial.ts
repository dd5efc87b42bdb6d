import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import type { UnitSystem } from '../../../shared/quantities/units.ts';

interface UsualDial {
  readonly graduation: string;
  readonly perTurn: string;
  readonly asked: string;
}

/**
 * The dial that somebody who speaks these units most likely has: common practice, no published source. Its figures
 * stand in a field with their unit, so that another choice of units before they are kept does not change the dial.
 */
const USUAL: Readonly<Record<UnitSystem, UsualDial>> = {
  inch: {
    graduation: '.001 in',
    perTurn: '.100 in',
    asked: 'Settle this first: .100 on the usual .001 dial; .050 and .200 exist.',
  },
  metric: {
    graduation: '0.01 mm',
    perTurn: '1 mm',
    asked: 'Settle this first: 1 mm on the usual 0.01 mm dial; 0.5 mm and inch dials exist.',
  },
};

export const usualDial = (): UsualDial => USUAL[spokenUnits()];
