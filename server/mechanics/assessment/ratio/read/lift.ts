import { defined } from '../../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { Evidence } from '../../evidence.ts';
import type { LiftDetail } from './detail.ts';
import type { SetUpNow } from './set-ups.ts';

/** A hydraulic lifter has no lash in running; of a solid one the setting, or what the card asks for. */
function runningLash(evidence: Evidence, setUp: SetUpNow): number | undefined {
  if (isHydraulicLifter(evidence.engine.lifter)) return 0;
  return setUp.lashSetting ?? evidence.card[sideOfValve(setUp.valve)].lash;
}

function netOf(evidence: Evidence, setUp: SetUpNow, read: number): LiftDetail['net'] {
  const lash = runningLash(evidence, setUp);
  if (lash === undefined || lash >= read) return undefined;
  return lash === 0
    ? { value: read, basis: 'measured' }
    : { value: read - lash, basis: 'calculated', lashTakenOff: lash };
}

/**
 * What is in a lift. One that was read with the lash set carries it: it is the net lift already, and only with the
 * setting put back is it gross. Only a lift with the lash out may have it taken off.
 */
export function liftOf(evidence: Evidence, setUp: SetUpNow, read: number): LiftDetail {
  if (setUp.lash === 'not-said') return { read, lash: 'not-said' };
  if (setUp.lash === 'set') {
    const setting = setUp.lashSetting;
    return {
      read,
      lash: 'in',
      ...(setting === undefined ? {} : { gross: { value: read + setting, basis: 'calculated' } }),
      net: { value: read, basis: 'measured' },
    };
  }
  const net = netOf(evidence, setUp, read);
  return {
    read,
    lash: 'out',
    gross: { value: read, basis: 'measured' },
    ...defined({ net }),
  };
}
