import type { InputFault } from '../../../shared/problems/faults.ts';
import { type AssumptionChanges, type AssumptionName, DEFAULT_ASSUMPTIONS } from './assumptions.ts';
import { type Allowed, checkNumber } from './check-number.ts';

const CHANCES: ReadonlySet<AssumptionName> = new Set([
  'markTrue',
  'turnTooMany',
  'turnTooFew',
  'handReadBackwards',
  'lashUnsaid',
  'lashZeroOrHydraulic',
  'lashSet',
  'tiltUnsaid',
  'tiltParallel',
  'tiltLeaning',
  'zeroMoved',
  'wrongCardRow',
  'wrongValve',
  'valveLiftAsLobe',
  'cardNotThisLobe',
  'slip',
  'unitOrDecimal',
  'unlistedFault',
  'passesScatter',
  'ratioNotListed',
  'zeroReturnFound',
  'zeroReturnFoundElse',
  'readBackFound',
  'readBackFoundElse',
  'nameTold',
  'nameSettled',
  'noMistakeSettled',
  'somethingElseAsks',
  'markAgrees',
  'markDiffers',
  'askFrom',
  'listFrom',
]);

/** Quantities that may be zero; the unlisted fault's mean may be negative too. */
const FROM_ZERO: ReadonlySet<AssumptionName> = new Set([
  'flexMean',
  'flexLightShare',
  'flexAtSeatShare',
  'sinkMean',
  'sinkPerPassMean',
  'sinkLightShare',
  'ratioChangePerInch',
  'lashMean',
  'lobesDiffer',
  'leastBits',
]);

function isName(name: string): name is AssumptionName {
  return name in DEFAULT_ASSUMPTIONS;
}

function allowedFor(name: AssumptionName): Allowed {
  const of = `The assumption ${name}`;
  if (CHANCES.has(name)) return { above: 0, below: 1, of };
  if (name === 'unlistedFaultMean') return { from: -100, upTo: 100, of };
  if (FROM_ZERO.has(name)) return { from: 0, upTo: 100, of };
  return { above: 0, upTo: 100, of };
}

/** Notes every assumption that is unknown, no number, or outside what it can be. */
export function checkAssumptions(faults: InputFault[], changes: AssumptionChanges): void {
  for (const [name, value] of Object.entries(changes)) {
    const pointer = `/assumptions/${name}`;
    if (!isName(name)) {
      faults.push({
        pointer,
        code: 'unknown-field',
        detail: 'There is no such assumption.',
        received: value,
      });
    } else {
      checkNumber(faults, pointer, value, allowedFor(name));
    }
  }
}
