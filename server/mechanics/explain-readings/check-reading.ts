import type { InputFault } from '../../../shared/problems/faults.ts';
import { checkNumber } from './check-number.ts';
import { MOST_PASSES, MOST_SET_UPS } from './limits.ts';
import type { ExplainReading } from './types.ts';

const LONGEST = 100;

/** Fields that say nothing about a lobe, or nothing about a valve lift. */
const VALVE_ONLY = ['atLobeLift', 'lashSet', 'aligned', 'counted', 'otherValve', 'perTurn'] as const;

function checkFit(faults: InputFault[], pointer: string, reading: ExplainReading): void {
  const misplaced =
    reading.of === 'lobe-lift' ? VALVE_ONLY : reading.method === undefined ? [] : (['method'] as const);
  for (const field of misplaced) {
    const received = reading[field];
    if (received === undefined || received === false) continue;
    const detail = `${field} does not belong to a ${reading.of === 'lobe-lift' ? 'lobe' : 'valve'} lift.`;
    faults.push({ pointer: `${pointer}/${field}`, code: 'not-allowed', detail, received });
  }
}

/** Notes every fault of one reading. Lengths above 0 and up to 100 in. */
export function checkReading(faults: InputFault[], pointer: string, reading: ExplainReading): void {
  const length = (of: string) => ({ above: 0, upTo: LONGEST, of });
  checkNumber(faults, `${pointer}/value`, reading.value, length('A lift'));
  checkNumber(faults, `${pointer}/pass`, reading.pass, {
    from: 1,
    upTo: MOST_PASSES,
    whole: true,
    of: 'A pass',
  });
  checkNumber(faults, `${pointer}/setUp`, reading.setUp, {
    from: 0,
    upTo: MOST_SET_UPS,
    whole: true,
    of: 'A set-up',
  });
  if (reading.atLobeLift !== undefined) {
    checkNumber(faults, `${pointer}/atLobeLift`, reading.atLobeLift, length('The lobe lift of a station'));
  }
  if (reading.perTurn !== undefined) {
    checkNumber(faults, `${pointer}/perTurn`, reading.perTurn, {
      from: 0.001,
      upTo: 1,
      of: 'Travel per turn',
    });
  }
  if (reading.errorLimit !== undefined) {
    checkNumber(faults, `${pointer}/errorLimit`, reading.errorLimit, {
      from: 0,
      upTo: 1,
      of: 'An error limit',
    });
  }
  checkFit(faults, pointer, reading);
}
