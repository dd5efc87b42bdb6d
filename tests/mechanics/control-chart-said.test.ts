import { computation as capability } from '../../server/mechanics/computations/capability.ts';
import { computation as chart } from '../../server/mechanics/computations/control-chart.ts';
import { describeSaid } from './helpers/said.ts';

const points = (count: number) => Array.from({ length: count }, (_, at) => 1.5 + ((at * 7) % 5) / 1000);
const groups = (count: number) => points(count).map((each) => [each, each + 0.001, each + 0.003]);

describeSaid(chart, {
  assumes: [
    ['subgroups', { subgroups: groups(25), chart: 'xbar-r' }, ['in one unit', 'subgroups were taken alike']],
    ['single values', { individuals: points(25), chart: 'individuals' }, ['in one unit', 'each range is']],
  ],
  warns: [
    ['20 subgroups', { subgroups: groups(20), chart: 'xbar-r' }, []],
    ['19 subgroups', { subgroups: groups(19), chart: 'xbar-r' }, ['Fewer than 20']],
    ['20 values', { individuals: points(20), chart: 'individuals' }, []],
    ['19 values', { individuals: points(19), chart: 'individuals' }, ['Fewer than 20']],
  ],
});

const lot = { mean: 16, s: 2, lower: 8, upper: 20 };
const limits = { lower: 1.4, upper: 1.6 };
describeSaid(capability, {
  assumes: [
    ['how many is not known', lot, ['in one unit', 'near normal', 'no interval']],
    ['how many', { ...lot, n: 30 }, ['in one unit', 'near normal']],
    ['values', { ...limits, values: points(30) }, ['in one unit', 'near normal']],
  ],
  warns: [
    ['how many is not known', lot, []],
    ['25', { ...lot, n: 25 }, []],
    ['24', { ...lot, n: 24 }, ['Fewer than 25']],
    ['25 values', { ...limits, values: points(25) }, []],
    ['24 values', { ...limits, values: points(24) }, ['Fewer than 25']],
  ],
});
