import type { Derived } from './derived.ts';
import { mean, spread, studentFactor } from './plain-statistics.ts';

const values = [1.502, 1.498, 1.501, 1.497, 1.503, 1.531, 1.496, 1.504, 1.455];
const middle = 1.501;
/** Distances from 1.501: 0, .001, .002, .003, .003, .004, .005, .030, .046: the fifth is .003. */
const mad = 0.003;
const scores = values.map((value) => (0.6745 * (value - middle)) / mad);

const centre = mean(values);
const s = spread(values);
const grubbs = values.map((value) => (value - centre) / s);
/** t above with chance .01/9 on 7 degrees: two-sided 1 − 2·.01/9 inside. */
const t = studentFactor(1 - 0.02 / 9, 7);
const critical = (8 / 3) * Math.sqrt(t ** 2 / (7 + t ** 2));

const lowest = -(grubbs[8] ?? 0);

/** d2 and d3 of pairs in closed form: 2/√π and √(2 − 4/π); of threes 3/√π and √(2 + 3√3/π − 9/π). */
const PAIR = { d2: 2 / Math.sqrt(Math.PI), d3: Math.sqrt(2 - 4 / Math.PI) };
const THREE = { d2: 3 / Math.sqrt(Math.PI), d3: Math.sqrt(2 + (3 * Math.sqrt(3)) / Math.PI - 9 / Math.PI) };

const singles = [10.1, 9.9, 10, 10.2, 9.8, 13];
const moving = singles.slice(1).map((value, index) => Math.abs(value - (singles[index] ?? 0)));
const groups = [
  [5, 5.2, 5.1],
  [4.9, 5, 5.3],
  [5.1, 5.1, 4.8],
  [5.2, 5, 5],
];
const range = mean([0.2, 0.4, 0.3, 0.2]);
const grand = mean(groups.map(mean));

const lot = [1.601, 1.598, 1.603, 1.6, 1.599, 1.606];
const [lower, upper] = [1.584, 1.61];
const cpk = Math.min(upper - mean(lot), mean(lot) - lower) / (3 * spread(lot));
const half = 1.959963984540054 * Math.sqrt(1 / 54 + cpk ** 2 / 10);

export const LOTS: readonly Derived[] = [
  {
    name: 'outliers',
    body: { values, method: 'median-mad' },
    result: {
      scores,
      flagged: [5, 8],
      critical: 3.5,
      summary: '2 of 9 stand out, the first is number 6 of the list',
    },
  },
  {
    name: 'outliers',
    body: { values, method: 'median-mad', tail: 'lower' },
    result: { scores, flagged: [8], critical: 3.5, summary: '1.455 stands out, number 9 of the list' },
  },
  {
    name: 'outliers',
    body: { values, method: 'grubbs', tail: 'lower', alpha: 0.01 },
    result: {
      scores: grubbs,
      flagged: lowest > critical ? [8] : [],
      critical,
      summary: lowest > critical ? '1.455 stands out, number 9 of the list' : 'none stands out',
    },
  },
  // More than half alike: the mean distance .0075 stands in, times 1.253314.
  {
    name: 'outliers',
    body: { values: [1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.56], method: 'median-mad' },
    result: {
      scores: [0, 0, 0, 0, 0, 0, 0, 0.06 / (1.253314 * 0.0075)],
      flagged: [7],
      critical: 3.5,
      summary: '1.56 stands out, number 8 of the list',
    },
  },
  {
    name: 'control-chart',
    body: { individuals: singles, chart: 'individuals' },
    result: {
      centre: { mean: mean(singles), range: mean(moving) },
      limits: {
        mean: {
          lower: mean(singles) - (3 * mean(moving)) / PAIR.d2,
          upper: mean(singles) + (3 * mean(moving)) / PAIR.d2,
        },
        range: { lower: 0, upper: mean(moving) * (1 + (3 * PAIR.d3) / PAIR.d2) },
      },
      // 13 is past 10.5 + 2.66·.82 = 12.68, and 3.2 past 3.267·.82 = 2.68.
      signals: [
        { index: 5, rule: 'beyond-limits' },
        { index: 5, rule: 'range-beyond-limits' },
      ],
      summary: 'a signal at point 6',
    },
  },
  {
    name: 'control-chart',
    body: { subgroups: groups, chart: 'xbar-r' },
    result: {
      centre: { mean: grand, range },
      limits: {
        mean: {
          lower: grand - (3 * range) / (THREE.d2 * Math.sqrt(3)),
          upper: grand + (3 * range) / (THREE.d2 * Math.sqrt(3)),
        },
        range: { lower: 0, upper: range * (1 + (3 * THREE.d3) / THREE.d2) },
      },
      signals: [],
      summary: 'no signal',
    },
  },
  {
    name: 'capability',
    body: { values: lot, lower, upper },
    result: { cp: (upper - lower) / (6 * spread(lot)), cpk, interval95: [cpk - half, cpk + half] },
  },
  // Published: 16.2 against limits about 15.9 with s .1 (control-chart course slides); no n, so no interval.
  {
    name: 'capability',
    body: { mean: 15.9, s: 0.1, lower: 15.8, upper: 16.2 },
    result: { cp: 0.4 / 0.6, cpk: 1 / 3 },
  },
];
