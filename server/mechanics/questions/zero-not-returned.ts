import { spread, within } from './compare.ts';
import { idsOf, liftsOf } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Pass, Question, QuestionInput } from './types.ts';
import { inch } from './words.ts';

const TEST = 'Turn back to the base circle, set the zero again and repeat the pass.';

const offZero = (pass: Pass) => Math.abs(pass.zeroReturn ?? 0);

function askOff(passes: readonly Pass[], weight: Question['weight']): Question[] {
  const most = Math.max(0, ...passes.map(offZero));
  if (passes.length === 0) return [];
  return [
    {
      code: 'zero-not-returned',
      weight,
      ask: 'Could the zero have moved? The hand did not come back to it.',
      size: `It stood ${inch(most)} off.`,
      test: TEST,
      restsOn: idsOf(passes),
    },
  ];
}

/** The lifts as if the turns of all had been counted alike: a turn apart is asked about by itself. */
function withoutTurns(lifts: readonly number[], perTurn: number): number[] {
  const [first = 0] = lifts;
  return lifts.map((lift) => lift - Math.round((lift - first) / perTurn) * perTurn);
}

/** Passes that scatter, and nobody looked at the zero. */
function askNotLooked(passes: readonly Pass[], perTurn: number, t: Tolerances): Question[] {
  const apart = spread(withoutTurns(liftsOf(passes), perTurn));
  const blind = passes.filter((pass) => pass.zeroReturn === undefined);
  if (blind.length === 0 || within(apart, t.passSpread)) return [];
  return [
    {
      code: 'zero-not-returned',
      weight: 'weak',
      ask: 'Could the zero have moved between the passes? Nobody looked whether the hand came back.',
      size: `The passes are ${inch(apart)} apart.`,
      test: TEST,
      restsOn: idsOf(blind),
    },
  ];
}

/** Row 9: the hand did not come back to zero on the base circle. */
export function zeroNotReturned(input: QuestionInput, tolerances: Tolerances): Question[] {
  const passes = [...input.valvePasses, ...input.lobePasses];
  const off = passes.filter((pass) => !within(offZero(pass), tolerances.zeroReturn));
  if (off.length > 0) return askOff(off, 'strong');
  const doubtful = passes.filter((pass) => !within(offZero(pass), tolerances.zeroReturnDoubtful));
  if (doubtful.length > 0) return askOff(doubtful, 'weak');
  return [input.valvePasses, input.lobePasses]
    .flatMap((own) => askNotLooked(own, input.perTurn, tolerances))
    .slice(0, 1);
}
