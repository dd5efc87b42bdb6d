import type {
  Evidence,
  SetUpEvidence,
  SetUpStatementEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import type { SetUp } from '../../../server/records/set-ups/set-ups.ts';
import {
  asItStands,
  type SetUpFacts,
  type SetUpStatement,
} from '../../../server/records/set-ups/statements.ts';
import type { BuildRecord } from '../../../server/records/whole-build/build-record.ts';
import { defined } from '../../../shared/defined.ts';
import { AT, entry, ifKnown, inches, WHO, without } from './stored.ts';

const factsOf = (set: SetUpEvidence): SetUpFacts => ({
  cylinder: set.cylinder,
  valve: set.valve,
  armId: set.armId,
  method: without({
    spring: set.spring,
    lifter: set.lifter,
    lash: set.lash,
    lashSetting: ifKnown(set.lashSetting),
    tool: set.tool,
    restsOn: set.restsOn,
    alignment: set.alignment,
    graduation: inches(set.graduation),
    perTurn: inches(set.perTurn),
    travel: ifKnown(set.travel),
    pushedIn: ifKnown(set.pushedIn),
    errorLimit: inches(set.errorLimit),
    lobeSource: set.lobeSource,
    lobeErrorLimit: inches(set.lobeErrorLimit),
  }),
});

const statementOf = ({ id, line, setUpId, says, notKnown }: SetUpStatementEvidence): SetUpStatement => {
  const { cylinder, valve, armId, spring, lifter, lash, restsOn, alignment, lobeSource, tool } = says;
  return {
    id,
    setUpId,
    seq: line,
    said: defined({
      cylinder,
      valve,
      armId,
      method: defined({
        ...{ spring, lifter, lash, restsOn, alignment, lobeSource, tool },
        lashSetting: ifKnown(says.lashSetting),
        graduation: ifKnown(says.graduation),
        perTurn: ifKnown(says.perTurn),
        travel: ifKnown(says.travel),
        pushedIn: ifKnown(says.pushedIn),
        errorLimit: ifKnown(says.errorLimit),
        lobeErrorLimit: ifKnown(says.lobeErrorLimit),
      }),
      notKnown: [...notKnown],
    }),
    reason: 'told later',
    ...WHO,
  };
};

export function setUpOf(set: SetUpEvidence, all: readonly SetUpStatementEvidence[]): SetUp {
  const started = factsOf(set);
  const own = all.filter(({ setUpId }) => setUpId === set.id).toSorted((a, b) => a.line - b.line);
  const statements = own.map(statementOf);
  return {
    id: set.id,
    buildId: 'build',
    number: set.number,
    revision: 1,
    ...asItStands(started, statements),
    started,
    struck: false,
    statements,
    by: WHO.by,
    at: AT,
  };
}

export const passes = (evidence: Evidence): BuildRecord['readings'] =>
  evidence.passes.map((pass) => ({
    ...entry(pass),
    setUpId: pass.setUpId,
    kind: pass.kind,
    pass: pass.pass,
    peak: { ...inches(pass.value), readAs: pass.readAs },
    zeroReturn: ifKnown(pass.zeroReturn),
    atLobeLift: ifKnown(pass.atLobeLift),
    counted: pass.counted,
  }));
