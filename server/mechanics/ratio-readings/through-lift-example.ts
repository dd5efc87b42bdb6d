const inch = (value: number) => ({ value, unit: 'in' });
const perLoad = (value: number) => ({ value, unit: 'in/lbf' });

const stations = (valveLifts: readonly number[]) =>
  valveLifts.map((valveLift, index) => ({
    lobeLift: inch([0.1, 0.2, 0.3][index] ?? 0),
    valveLift: inch(valveLift),
  }));

/**
 * Three stations on each spring about R 1.6, .004 in of lash and 5e-5 in/lbf, each a few tenths of a thousandth off;
 * the result by normal equations in forty digits, apart from this code.
 */
export const throughLiftExample = {
  inputs: {
    pairs: stations([0.1563, 0.3158, 0.4761]),
    readingUncertainty: inch(0.0015),
    secondPass: {
      pairs: stations([0.1467, 0.3044, 0.4614]),
      springSeatLoad: { value: 130, unit: 'lbf' },
      springRate: { value: 350, unit: 'lbf/in' },
    },
  },
  result: {
    ratio: { value: 1.600069131828205, standardUncertainty: 0.01439624431736975 },
    lashLeftIn: { value: inch(0.003963801162116608), standardUncertainty: inch(0.003116610331179689) },
    compliance: {
      value: perLoad(5.018523520161596e-5),
      standardUncertainty: perLoad(9.600975295507598e-6),
    },
    correlations: [
      [1, 0.8569549124863234, 0.183641545775894],
      [0.8569549124863234, 1, -0.1945593231040068],
      [0.183641545775894, -0.1945593231040068, 1],
    ],
    residuals: [
      0.00025688797929611, -0.0002500252035243876, 0.0000430616136551148, -0.000242270543066843,
      0.0002207903310658536, -0.00002844417742584778,
    ].map(inch),
    segmentRatios: [1.595, 1.603],
    runningSegmentRatios: [1.577, 1.57],
    identifiable: ['ratio', 'lashLeftIn', 'compliance'],
  },
};
