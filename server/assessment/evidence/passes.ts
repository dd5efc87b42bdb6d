import { defined } from '../../../shared/defined.ts';
import { siIf, siOf } from '../../../shared/schemas/entered.ts';
import { keysOf, READING_KINDS } from '../../../shared/schemas/words.ts';
import type {
  PassEvidence,
  SatThen,
  SetUpEvidence,
  SetUpStatementEvidence,
} from '../../mechanics/assessment/evidence.ts';
import { liftWithin, lobeWithin } from '../../mechanics/kit/lift-tools.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import type { SetUpStatement } from '../../records/set-ups/statements.ts';
import { entryEvidence } from './entry.ts';

/** As it was said before the first reading, with the arm that sat there then. */
export function setUpEvidence(
  { id, number, started }: SetUp,
  arm: Pick<SetUpEvidence, 'armId' | 'putOnLater'>,
  sat: readonly SatThen[] = [],
): SetUpEvidence {
  const { cylinder, valve, method } = started;
  const { spring, lifter, lash, restsOn, alignment, lobeSource } = method;
  return {
    id,
    number,
    cylinder,
    valve,
    ...arm,
    ...defined({
      tool: method.tool,
      lashSetting: siIf(method.lashSetting),
      travel: siIf(method.travel),
      pushedIn: siIf(method.pushedIn),
    }),
    spring,
    lifter,
    lash,
    restsOn,
    alignment,
    graduation: siOf(method.graduation),
    perTurn: siOf(method.perTurn),
    errorLimit: siIf(method.errorLimit) ?? liftWithin(method.tool ?? 'indicator'),
    lobeSource,
    lobeErrorLimit: siIf(method.lobeErrorLimit) ?? lobeWithin(lobeSource),
    ...(sat.length === 0 ? {} : { satThen: sat }),
  };
}

/** What was said of it later. */
export const statementEvidence = ({ id, seq, setUpId, said }: SetUpStatement): SetUpStatementEvidence => {
  const { cylinder, valve, armId, method = {}, notKnown = [] } = said;
  const { spring, lifter, lash, restsOn, alignment, lobeSource } = method;
  return {
    id,
    line: seq,
    setUpId,
    says: defined({
      ...{ cylinder, valve, armId, spring, lifter, lash, restsOn, alignment, lobeSource, tool: method.tool },
      lashSetting: siIf(method.lashSetting),
      graduation: siIf(method.graduation),
      perTurn: siIf(method.perTurn),
      travel: siIf(method.travel),
      pushedIn: siIf(method.pushedIn),
      errorLimit: siIf(method.errorLimit) ?? (method.tool && liftWithin(method.tool)),
      lobeErrorLimit: siIf(method.lobeErrorLimit) ?? (lobeSource && lobeWithin(lobeSource)),
    }),
    notKnown,
  };
};

const KINDS = keysOf(READING_KINDS);

export function passEvidence(reading: Reading, entered: number): PassEvidence {
  const kind = KINDS.find((each) => each === reading.kind);
  if (kind === undefined) throw new Error(`a stored reading has the unknown kind ${reading.kind}`);
  return {
    ...entryEvidence(reading, entered),
    setUpId: reading.setUpId,
    kind,
    pass: reading.pass,
    value: siOf(reading.peak),
    ...defined({ zeroReturn: siIf(reading.zeroReturn), atLobeLift: siIf(reading.atLobeLift) }),
    counted: reading.counted,
    readAs: reading.peak.readAs,
    day: reading.at.toISOString().slice(0, 10),
  };
}
