/** The digit of a lift at a decimal place: 1 for tenths, 2 hundredths, 3 thousandths of an inch. */
function digitAt(value: number, place: number): number {
  return Math.floor(Math.abs(value) * 10 ** place + 1e-6) % 10;
}

/**
 * What an entry (inches) may have been before one slip of the pen: its tenths or its hundredths
 * digit another one, or two neighbours of its first three digits the other way round. Digits below
 * the thousandths stay. Source: design note, judgement.
 */
export function slipsOf(value: number): number[] {
  const [tenths, hundredths, thousandths] = [digitAt(value, 1), digitAt(value, 2), digitAt(value, 3)];
  const candidates: number[] = [];
  for (let digit = 0; digit <= 9; digit++) {
    if (digit !== tenths) candidates.push(value + (digit - tenths) / 10);
    if (digit !== hundredths) candidates.push(value + (digit - hundredths) / 100);
  }
  const swapFirst = (hundredths - tenths) * (0.1 - 0.01);
  const swapLast = (thousandths - hundredths) * (0.01 - 0.001);
  if (swapFirst !== 0) candidates.push(value + swapFirst);
  if (swapLast !== 0) candidates.push(value + swapLast);
  return candidates;
}

/** The candidate nearest to a wanted value; the wanted value and the answer in inches. */
export function nearest(candidates: readonly number[], wanted: number): number {
  let best = Number.NaN;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const distance = Math.abs(candidate - wanted);
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}
