const newtons = (value: number) => ({ value: value / 4.4482216152605, unit: 'lbf' });

/** Rates and free lengths as in V. B. Bhandari's example 10.19, at a height of its own. */
export const nestExample = {
  inputs: {
    springs: [
      {
        rate: { value: 28.253472, unit: 'N/mm' },
        freeLength: { value: 100, unit: 'mm' },
        solidHeight: { value: 60, unit: 'mm' },
      },
      {
        rate: { value: 29.4307, unit: 'N/mm' },
        freeLength: { value: 85, unit: 'mm' },
        solidHeight: { value: 45, unit: 'mm' },
      },
    ],
    installedHeight: { value: 75, unit: 'mm' },
    netLift: { value: 10, unit: 'mm' },
  },
  result: {
    // Pressed by 25 and 10 mm on the seat, by 35 and 20 mm at full lift.
    seatLoad: newtons(28.253472 * 25 + 29.4307 * 10),
    openLoad: newtons(28.253472 * 35 + 29.4307 * 20),
    loads: [
      { seatLoad: newtons(28.253472 * 25), openLoad: newtons(28.253472 * 35) },
      { seatLoad: newtons(29.4307 * 10), openLoad: newtons(29.4307 * 20) },
    ],
    margin: { value: 5 / 25.4, unit: 'in' },
    limit: { value: 0.06, unit: 'in' },
    verdict: 'clear',
    limiting: 0,
  },
};
