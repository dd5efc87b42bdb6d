import { formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';

/** A length in a sentence: `.0667 in`, and `.017 in` where the fourth place is zero. */
export function saidLength(si: number): string {
  const inches = fromSi(si, 'in');
  const short = inches.value.toFixed(4).endsWith('0');
  return formatQuantity(inches, { places: short ? 3 : 4 });
}
