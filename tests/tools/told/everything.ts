import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { forBench } from '../../../server/mechanics/assessment/for-bench.ts';
import { saidOfSetUp, toldOf } from '../../../server/mechanics/assessment/ratio/read/said-of-set-up.ts';
import { stopsOf } from '../../../server/mechanics/assessment/stops-of.ts';
import { wordsOf } from '../../../server/mechanics/assessment/words-of.ts';

/** An assessment, and what the pages choose out of it by the functions that stand beside it. */
export interface Everything {
  readonly assessment: Assessment;
  /** What a builder's link has otherwise, the verdict words, what is told of each set-up, the stops by themselves. */
  readonly chosen: Readonly<Record<string, unknown>>;
}

export function everything(evidence: Evidence): Everything {
  const assessment = assess(evidence);
  const { questions, next, stop, notToRun } = forBench(assessment);
  const setUps = assessment.details.setUps.map((detail) => {
    const said = saidOfSetUp(assessment, detail);
    const ids = [said.questions, said.quantities].map((all) => all.map(({ id }) => id));
    return { ids, explained: said.explanation?.id, told: toldOf(said) };
  });
  return {
    assessment,
    chosen: {
      bench: { tests: questions.map(({ test }) => test), next, stop, notToRun },
      words: wordsOf(assessment),
      'told of set-ups': setUps,
      'stops alone': stopsOf(evidence),
    },
  };
}
