import { defined } from '../../../shared/defined.ts';
import { siIf, siOf } from '../../../shared/schemas/entered.ts';
import { keysOf, READING_KINDS } from '../../../shared/schemas/words.ts';
import type { PassEvidence, SetUpEvidence } from '../../mechanics/assessment/evidence.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import { entryEvidence } from './entry.ts';

export function setUpEvidence(
  { id, number, cylinder, valve, method }: SetUp,
  armId: string | undefined,
): SetUpEvidence {
  return {
    id,
    number,
    cylinder,
    valve,
    ...defined({
      armId,
      lashSetting: siIf(method.lashSetting),
      travel: siIf(method.travel),
      pushedIn: siIf(method.pushedIn),
    }),
    spring: method.spring,
    lifter: method.lifter,
    lash: method.lash,
    restsOn: method.restsOn,
    alignment: method.alignment,
    graduation: siOf(method.graduation),
    perTurn: siOf(method.perTurn),
    errorLimit: siOf(method.errorLimit),
    lobeSource: method.lobeSource,
    lobeErrorLimit: siOf(method.lobeErrorLimit),
  };
}

const KINDS = keysOf(READING_KINDS);

export function passEvidence(reading: Reading): PassEvidence {
  const kind = KINDS.find((each) => each === reading.kind);
  if (kind === undefined) throw new Error(`a stored reading has the unknown kind ${reading.kind}`);
  return {
    ...entryEvidence(reading),
    setUpId: reading.setUpId,
    kind,
    pass: reading.pass,
    value: siOf(reading.peak),
    ...defined({ zeroReturn: siIf(reading.zeroReturn), atLobeLift: siIf(reading.atLobeLift) }),
    counted: reading.counted,
    readAs: reading.peak.readAs,
  };
}
