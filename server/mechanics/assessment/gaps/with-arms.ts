import type { SheetEvidence } from '../evidence.ts';

/** With which arms a gap was read, where those are not simply what is on: `with the arms that are off since`. */
export function withArms({ arms, otherArms }: Pick<SheetEvidence, 'arms' | 'otherArms'>): string {
  if (otherArms !== undefined)
    return `with the arms that are ${otherArms === 'on-now' ? 'on now' : 'off since'}`;
  return arms === 'before' ? 'with the arms before' : '';
}
