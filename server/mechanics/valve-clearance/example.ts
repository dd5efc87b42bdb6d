/**
 * The worked example: lift readings every two degrees past top dead centre. Worked out apart: SciPy's
 * PchipInterpolator through the readings, the slider-crank in its plain form, the least gap as the root of the slope.
 * Crank angle [deg], gap [in], sideways move [in].
 */
const STATIONS: readonly (readonly [number, number, number])[] = [
  [0, 0.38783999999999996, 0.0],
  [1, 0.384434875758921, 0.0001351549763069951],
  [2, 0.38143346199126893, 0.0005405525446938036],
  [3, 0.37884270665498854, 0.0012159906648485906],
  [4, 0.37661130967967027, 0.00216113274054423],
  [5, 0.37466397488134595, 0.003375507826103234],
  [6, 0.37304593443461365, 0.004858510915479812],
  [7, 0.37179113958163745, 0.006609403313998634],
  [8, 0.3708846759603757, 0.00862731309280026],
  [9, 0.37031636109297705, 0.010911235626030722],
  [10, 0.3701098534397042, 0.013460034210851953],
  [11, 0.37029774656748626, 0.016272440770315057],
  [12, 0.370858809155127, 0.019347056639175186],
];

const READINGS = [0.0201, 0.0249, 0.0303, 0.0365, 0.0434, 0.051, 0.0592];

const deg = (value: number) => ({ value, unit: 'deg' });
const inch = (value: number) => ({ value, unit: 'in' });

export const pistonToValveExample = {
  inputs: {
    stroke: inch(3.48),
    rodLength: inch(5.7),
    valveAngle: deg(23),
    floor: 'pocket',
    closedGapAtTdc: inch(0.42),
    side: 'intake',
    lifts: READINGS.map((lift, index) => ({ crankAngle: deg(2 * index), lift: inch(lift) })),
    ratio: 1.6,
  },
  result: {
    margin: inch(0.3701098285971862),
    limit: inch(0.08),
    verdict: 'clear',
    atCrankAngle: deg(9.989517427431641),
    curve: STATIONS.map(([crankAngle, gap]) => ({ crankAngle: deg(crankAngle), gap: inch(gap) })),
    radialShift: STATIONS.map(([crankAngle, , shift]) => ({
      crankAngle: deg(crankAngle),
      shift: inch(shift),
    })),
  },
};
