import { defined } from '../../../../shared/defined.ts';
import type { ValveRatio } from '../change/input.ts';
import type { SetUpKnown } from './known.ts';

function ofSetUp({ read, result, lacks }: SetUpKnown): ValveRatio[] {
  const { setUp, lobe, valve } = read;
  if (result === undefined || lobe.value === undefined || setUp.spring === 'not-said') return [];
  const left = setUp.lash === 'set';
  const putBack = left && setUp.lashSetting !== undefined;
  return [
    {
      cylinder: setUp.cylinder,
      valve: setUp.valve,
      setUpId: setUp.id,
      ...defined({ armId: setUp.armId }),
      value: result.ratio,
      low: result.interval95[0],
      high: result.interval95[1],
      spring: setUp.spring,
      basis: putBack ? 'calculated' : 'measured',
      lashIn: putBack ? 'put-back' : left ? 'left-in' : setUp.lash === 'zero' ? 'none' : 'not-said',
      lobeLift: lobe.value,
      lacks,
      restsOn: [...valve.used, ...lobe.passes.used].map(({ id }) => id).sort(),
    },
  ];
}

/** Ratios that were read, as the calculation of a change takes them. */
export const valveRatios = (known: readonly SetUpKnown[]): ValveRatio[] => known.flatMap(ofSetUp);
