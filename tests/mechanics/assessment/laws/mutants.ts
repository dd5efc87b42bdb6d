import type { Assessment } from '../../../../server/mechanics/assessment/assessment.ts';
import type { NoiseDetail } from '../../../../server/mechanics/assessment/noise/detail.ts';
import type { LAWS } from './all.ts';
import { type Assessed, setUpsNow } from './law.ts';

/** A fault put into what is said of a build; undefined where the build has nothing that could be broken so. */
export type Mutant = (assessed: Assessed) => Assessment | undefined;

const withWord: Mutant = ({ assessment }) => {
  const at = assessment.judgements.findIndex(
    ({ against, lacks, word }) => against.to === 'mark' && word === undefined && lacks.length > 0,
  );
  const judgements = assessment.judgements.map((each, index) =>
    index === at ? { ...each, word: 'agrees' as const } : each,
  );
  return at < 0 ? undefined : { ...assessment, judgements };
};

const inferenceWord: Mutant = ({ assessment }) => {
  const at = assessment.explanations.findIndex(
    ({ result }) => result !== undefined && result.againstMark === undefined,
  );
  const explanations = assessment.explanations.map((each, index) =>
    index === at && each.result !== undefined
      ? { ...each, result: { ...each.result, againstMark: 'agrees' as const } }
      : each,
  );
  return at < 0 ? undefined : { ...assessment, explanations };
};

/** The lash of a lift that carries it already is taken off once more. */
const lashTwice: Mutant = ({ evidence, assessment }) => {
  const setUp = setUpsNow({ seed: 0, evidence, assessment }).find(
    ({ lash, lashSetting }) => lash === 'set' && lashSetting !== undefined,
  );
  const id = `net-lift-read:${setUp?.id}`;
  if (!assessment.quantities.some((each) => each.id === id)) return undefined;
  const off = setUp?.lashSetting ?? 0;
  return {
    ...assessment,
    quantities: assessment.quantities.map((each) =>
      each.id === id && each.value !== undefined ? { ...each, value: each.value - off } : each,
    ),
  };
};

/** As if a larger reading had replaced the one that was short. */
const wasShort: Mutant = ({ assessment }) => {
  const clear = assessment.judgements.some(({ word }) => word === 'clear');
  return clear
    ? {
        ...assessment,
        judgements: assessment.judgements.map((each) =>
          each.word === 'clear' ? { ...each, word: 'short' } : each,
        ),
      }
    : undefined;
};

const lashAgain: Mutant = ({ evidence, assessment }) => {
  const at = assessment.explanations.findIndex(
    ({ result, setUpIds }) =>
      result !== undefined &&
      evidence.setUps.some(({ id, lash }) => setUpIds.includes(id) && lash === 'zero'),
  );
  const nextReading = { action: 'lash-to-zero' as const, bits: 1, minutes: 4, outcomes: [] };
  const explanations = assessment.explanations.map((each, index) =>
    index === at && each.result !== undefined ? { ...each, result: { ...each.result, nextReading } } : each,
  );
  return at < 0 ? undefined : { ...assessment, explanations };
};

const otherRatio: Mutant = ({ assessment, evidence }) => {
  if (evidence.rockers.planned === undefined || assessment.details.change.length === 0) return undefined;
  const change = assessment.details.change.map((each) =>
    each.after === undefined ? each : { ...each, after: { ...each.after, from: 'sold-as' as const } },
  );
  return { ...assessment, details: { ...assessment.details, change } };
};

/** Calculated with less than what was read. */
const lessThanRead: Mutant = ({ assessment }) => {
  if (assessment.details.sheet.ratios.length === 0) return undefined;
  const change = assessment.details.change.map((each) =>
    each.after === undefined ? each : { ...each, after: { ...each.after, high: 1 } },
  );
  return { ...assessment, details: { ...assessment.details, change } };
};

const turnsIt: Mutant = ({ assessment }) =>
  assessment.stop.length === 0 || assessment.next === undefined
    ? undefined
    : { ...assessment, next: { ...assessment.next, turns: true } };

const noStop: Mutant = ({ assessment }) =>
  assessment.judgements.some(({ word }) => word === 'short')
    ? { ...assessment, stop: [], notToRun: [] }
    : undefined;

const sendsToTurn: Mutant = ({ assessment }) => {
  const [first, ...rest] = assessment.headlines;
  if (assessment.stop.length === 0 || first === undefined) return undefined;
  const sentence = `${first.sentence} Read the valve there.`;
  return { ...assessment, headlines: [{ ...first, sentence }, ...rest] };
};

const tooFine: Mutant = ({ assessment }) => ({
  ...assessment,
  quantities: assessment.quantities.map((each) =>
    each.value === undefined ? each : { ...each, low: each.value, high: each.value },
  ),
});

/** The detail of noise with a fault in it. */
const noiseWith =
  (broken: (detail: NoiseDetail) => Partial<NoiseDetail> | undefined): Mutant =>
  ({ assessment }) => {
    const { details } = assessment;
    const fault = broken(details.noise);
    return fault === undefined
      ? undefined
      : { ...assessment, details: { ...details, noise: { ...details.noise, ...fault } } };
  };

/** The first cause that has something against it is said to be free of it. */
const clearedCause = noiseWith(({ candidates }) => {
  const at = candidates.findIndex(({ against }) => against.some(({ key }) => key === 'noise-nut'));
  return at < 0
    ? undefined
    : { candidates: candidates.map((each, index) => (index === at ? { ...each, against: [] } : each)) };
});

const signForgotten: Mutant = ({ assessment }) =>
  assessment.stop.some(({ code }) => code === 'sign-of-damage')
    ? { ...assessment, stop: assessment.stop.filter(({ code }) => code !== 'sign-of-damage') }
    : undefined;

const causeAsVerdict: Mutant = ({ assessment }) => {
  const told = assessment.headlines.some(({ step }) => step === 'noise');
  const headlines = assessment.headlines.map((each) =>
    each.step === 'noise' ? { ...each, sentence: 'It is the lobe.' } : each,
  );
  return told ? { ...assessment, headlines } : undefined;
};

const withScans = (
  assessment: Assessment,
  change: (scan: Assessment['details']['scans']['scans'][number]) => object,
): Assessment => ({
  ...assessment,
  details: {
    ...assessment.details,
    scans: { scans: assessment.details.scans.scans.map((scan) => ({ ...scan, ...change(scan) })) },
  },
});

/** Every scan is clear, whatever it was read under. */
const scansClear: Mutant = ({ assessment }) =>
  assessment.details.scans.scans.some(({ word, lacks }) => word === undefined && lacks.length > 0)
    ? withScans(assessment, () => ({ word: 'clear' }))
    : undefined;

/** The lash that was in a scan is taken off once more. */
const scanLashTwice: Mutant = ({ evidence, assessment }) => {
  const setting = evidence.scans?.find(({ standing, lash }) => standing && lash === 'set')?.lashSetting;
  return setting === undefined
    ? undefined
    : withScans(assessment, ({ least }) =>
        least.low === undefined ? {} : { least: { ...least, low: least.low - setting } },
      );
};

const scansUntold: Mutant = ({ assessment }) =>
  assessment.details.scans.scans.length === 0
    ? undefined
    : { ...assessment, details: { ...assessment.details, scans: { scans: [] } } };

/** For each law, faults that it must find. */
export const MUTANTS: Readonly<Record<keyof typeof LAWS, readonly Mutant[]>> = {
  '1 order does not matter': [
    ({ assessment }) =>
      assessment.questions.length < 2
        ? undefined
        : { ...assessment, questions: assessment.questions.toReversed() },
  ],
  '1 what is told late counts': [
    ({ evidence, assessment }) =>
      evidence.statements.length === 0 || assessment.quantities.length === 0
        ? undefined
        : { ...assessment, quantities: assessment.quantities.slice(1) },
  ],
  '3 nothing stands against its own conditions': [withWord, inferenceWord, scansClear],
  '3 no gap is clear on a ratio that its readings deny': [lessThanRead],
  '3 a cause is no verdict': [
    noiseWith(({ candidates }) => ({ candidates: candidates.slice(1) })),
    noiseWith(({ candidates, facts }) =>
      facts.length === 0 ? undefined : { candidates: candidates.toReversed() },
    ),
    noiseWith(({ facts }) => (facts.length === 0 ? undefined : { facts: [...facts, ...facts] })),
    clearedCause,
    signForgotten,
    causeAsVerdict,
  ],
  '4 nothing is counted twice': [lashTwice, scanLashTwice],
  '5 the worst reading of a gap stands': [wasShort],
  '6 headline and next ask for the same first': [
    ({ assessment }) =>
      assessment.next?.step === 'ratio' || assessment.next?.step === 'consequences'
        ? { ...assessment, next: { ...assessment.next, sentence: 'Read the marks on the arm.', reason: '' } }
        : undefined,
  ],
  '6 what is next rests on the first question': [
    ({ assessment }) => ({
      ...assessment,
      questions: assessment.questions.map((each) => ({ ...each, weight: 'weak' as const })),
    }),
    ({ assessment }) => ({ ...assessment, questions: assessment.questions.toReversed() }),
  ],
  '6 verdict and explanation agree': [inferenceWord, lashAgain],
  '7 what cannot be computed says so': [
    scansUntold,
    ({ assessment }) =>
      assessment.explanations.length === 0 ? undefined : { ...assessment, explanations: [] },
    ({ assessment }) =>
      assessment.explanations.length === 0
        ? undefined
        : {
            ...assessment,
            explanations: assessment.explanations.map((each) => ({ ...each, refused: 'a flag' })),
          },
    ({ assessment }) => ({
      ...assessment,
      quantities: assessment.quantities.map((each) => ({ ...each, value: Number.NaN })),
    }),
  ],
  '8 a planned part is judged as planned': [otherRatio],
  '9 a stop is a stop': [turnsIt, sendsToTurn, noStop],
  '10 no figure is finer than its source': [tooFine],
};
