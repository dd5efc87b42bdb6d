const inch = (value: number) => ({ value, unit: 'in' });

const line = (source: string, contribution: number, share: number) => ({ source, contribution, share });

/**
 * Five passes at each end with ±.001 in error limits, no shared indicator: ratio 1.5, u .003086894, ν 35960,
 * U .006050, calculated apart from this code.
 */
export const fullLiftExample = {
  inputs: {
    valveLift: {
      readings: [0.5251, 0.5248, 0.5252, 0.5249, 0.525].map(inch),
      graduation: inch(0.0005),
      errorLimit: inch(0.001),
    },
    lobeLift: {
      readings: [0.3501, 0.3499, 0.35, 0.3502, 0.3498].map(inch),
      graduation: inch(0.0005),
      errorLimit: inch(0.001),
    },
    sameIndicator: false,
    spring: 'light',
    nominals: [1.5, 1.6],
  },
  result: {
    ratio: 1.5,
    standardUncertainty: 0.0030868935136518483,
    degreesOfFreedom: 35960.60595646657,
    coverageFactor: 1.960029956445566,
    interval95: [1.4939495962408849, 1.5060504037591151],
    budget: [
      line('valve lift, repeatability', 0.0002020305089104151, 0.004283419596643506),
      line('valve lift, graduation', 0.0004123930494211612, 0.017847581652686052),
      line('valve lift, error limit', 0.0016495721976846449, 0.28556130644297684),
      line('lobe lift, repeatability', 0.00030304576336568484, 0.009637694092451845),
      line('lobe lift, graduation', 0.0006185895741317419, 0.04015705871854363),
      line('lobe lift, error limit', 0.0024743582965269678, 0.6425129394966981),
    ],
    nominals: [
      { ratio: 1.5, verdict: 'agrees', needsValveLift: inch(0.525) },
      { ratio: 1.6, verdict: 'differs', needsValveLift: inch(0.56) },
    ],
  },
};
