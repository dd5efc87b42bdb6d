import { defined } from '../../../../../shared/defined.ts';
import type { Evidence } from '../../evidence.ts';
import type { SetUpKnown } from '../compared/known.ts';
import type { PassDetail, SetUpDetail } from '../read/detail.ts';
import { assumptionsOf, cautionsOf } from '../read/full-lift.ts';
import { lackSaid } from '../read/lack-said.ts';
import { passToRead } from '../read/lobe-passes.ts';
import type { SetUpRead } from '../read/set-up-read.ts';
import { throughLift } from '../read/through-lift.ts';
import { toolSaid } from '../read/tool-said.ts';
import { ratioQuantityId } from './set-up-quantities.ts';

/** One that was found wrong stays where it is, with why it is in no figure. */
const readAgain = ({ passes }: Evidence, { setUp }: SetUpRead): PassDetail[] =>
  passes
    .filter((each) => each.setUpId === setUp.id && each.readAgain === true)
    .map(({ id, kind, pass, value, zeroReturn, atLobeLift, counted, readAs }) => ({
      ...{ entryId: id, kind, pass, value, counted, readAs },
      ...defined({ zeroReturn, atLobeLift }),
      aside: {
        code: 'read-again',
        sentence: `Pass ${pass} was found wrong, as was answered, and was read again; it is in no figure.`,
      },
    }));

function passDetails({ standing, valve, lobe }: SetUpRead): PassDetail[] {
  const asides = [...valve.aside, ...(lobe.from === undefined ? lobe.passes.aside : [])];
  return standing.map((pass) => {
    const { id, kind, pass: number, value, zeroReturn, atLobeLift, counted, readAs } = pass;
    const aside = asides.find((each) => each.pass === pass);
    return {
      entryId: id,
      kind,
      pass: number,
      value,
      ...defined({ zeroReturn, atLobeLift }),
      counted,
      readAs,
      ...(aside === undefined ? {} : { aside: { code: aside.code, sentence: aside.sentence } }),
    };
  });
}

const borrowed = ({ lobe: { from } }: SetUpRead): string[] =>
  from === undefined
    ? []
    : [
        `the lobe was read in set-up ${from.number}; at the lifter’s body it serves both springs and any lash`,
      ];

function groundsOf({ read, input, result }: SetUpKnown): Pick<SetUpDetail, 'assumptions' | 'cautions'> {
  if (input === undefined || result === undefined) return { assumptions: [], cautions: [] };
  return {
    assumptions: [...assumptionsOf(input, read.setUp), ...borrowed(read)],
    cautions: [...toolSaid(read, result), ...cautionsOf(input, result)],
  };
}

/** Figures of one set-up, for tables and drawings. */
export function setUpDetail(evidence: Evidence, known: SetUpKnown, all: readonly SetUpRead[]): SetUpDetail {
  const { read, questions, lacks, input, result, nominals } = known;
  const { answers: _, armTaken, satThen: _sat, ...setUp } = read.setUp;
  const { passes: __, lacks: ___, ...lobe } = read.lobe;
  const arm = evidence.arms.find(({ id }) => id === setUp.armId);
  return {
    setUp,
    ...(arm === undefined ? {} : { armName: arm.name }),
    armTaken,
    passes: [...passDetails(read), ...readAgain(evidence, read)],
    reads: passToRead(read),
    lobe,
    ...defined({ lift: read.lift, input, result, nominals }),
    quantityId: ratioQuantityId(known),
    throughLift: throughLift(evidence, read, all),
    lacks: lacks.map(lackSaid),
    ...groundsOf(known),
    questionIds: questions.map(({ id }) => id),
  };
}
