import type { Judgement } from '../../../../server/mechanics/assessment/assessment.ts';
import type { Evidence, SetUpEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { type Assessed, isAgainstArm, type Law, passesIn, placeOf, setUpsNow } from './law.ts';
import { conditionsOfScans } from './scans.ts';

const IN = 0.0254;
/** Each pass within .002 in of the middle: common practice, no published source. */
const APART = 0.004 * IN + 1e-9;
/** A lifter whose passes fall by more than this each is sinking: common practice, no published source. */
const SINKS = 0.003 * IN;

/** A set-up whose state is what a light-spring ratio needs, whenever it was said. */
function isClean(evidence: Evidence, setUp: SetUpEvidence): boolean {
  const passes = passesIn(evidence, setUp, 'valve-lift').map(({ value }) => value);
  const falls = passes.slice(1).every((value, index) => value < (passes[index] ?? 0) - SINKS);
  const sinking = setUp.lifter === 'hydraulic' && passes.length > 1 && falls;
  return (
    setUp.spring === 'light' &&
    setUp.lifter !== 'not-said' &&
    setUp.lash === 'zero' &&
    setUp.alignment !== 'leaning' &&
    passes.length > 0 &&
    Math.max(...passes) - Math.min(...passes) <= APART &&
    !sinking
  );
}

function unclean(assessed: Assessed, { about, id }: Judgement): string[] {
  if (about.of !== 'valve') return [];
  const here = setUpsNow(assessed).filter((setUp) => placeOf(setUp) === placeOf(about));
  const clean = here.some((setUp) => isClean(assessed.evidence, setUp));
  return clean ? [] : [`${id}: a word stands though no set-up of the valve is as it must be`];
}

/** A lifter that sinks makes these read larger than they are. */
const READ_LARGE: ReadonlySet<string> = new Set(['piston-to-valve', 'slot-to-stud', 'cover']);

function sinkingGap({ evidence }: Assessed, { word, restsOn, id }: Judgement): string[] {
  const soft = evidence.sheet.filter(
    (entry) => restsOn.includes(entry.id) && entry.lifter === 'hydraulic' && READ_LARGE.has(entry.kind),
  );
  return word === 'clear' && soft.length > 0 ? [`${id}: clear on a hydraulic lifter`] : [];
}

const CHANCE = /about \d+ %|under 5 %/;

/** Where no word may stand no chance stands either, and no value that is weighed from what may not stand. */
function chancesAgainstConditions({ assessment }: Assessed): string[] {
  return assessment.explanations.flatMap(({ id, summary, chances, wouldBeTrue }) => {
    const key = id.replace('explanation:', '');
    const ids = ['mark', 'sold-as', 'nominal'].map((to) => `ratio:${key}:${to}`);
    const own = assessment.judgements.filter((each) => ids.includes(each.id));
    const lacking = own.some(({ lacks }) => lacks.length > 0);
    const weighed = assessment.quantities.find((each) => each.id === `arm-weighed:${key}`);
    const names = assessment.remaining.some(
      ({ about, names: left }) =>
        'cylinder' in about && key.startsWith(`${about.cylinder}-${about.valve}`) && left.length > 0,
    );
    return [
      ...(lacking && chances !== 'none' ? [`${id}: chances are ${chances}, and no word may stand`] : []),
      ...(lacking && weighed?.value !== undefined ? [`${id}: weighed, and no word may stand`] : []),
      ...(chances !== 'told' && CHANCE.test([summary, ...wouldBeTrue].join(' '))
        ? [`${id}: a chance is told: ${summary}`]
        : []),
      ...(chances !== 'told' && names && assessment.explanations.length === 1
        ? [`${id}: names are left, and no chance is told`]
        : []),
    ];
  });
}

/** Law 3: nothing stands against its own conditions. */
export const nothingAgainstItsConditions: Law = (assessed) => {
  const { judgements, explanations } = assessed.assessment;
  const worded = judgements.filter(({ word }) => word !== undefined);
  return [
    ...worded.filter(isAgainstArm).flatMap((judgement) => unclean(assessed, judgement)),
    ...worded
      .filter((judgement) => isAgainstArm(judgement) && judgement.lacks.length > 0)
      .map(({ id }) => `${id}: a word stands beside what it lacks`),
    ...worded.flatMap((judgement) => sinkingGap(assessed, judgement)),
    ...conditionsOfScans(assessed),
    ...chancesAgainstConditions(assessed),
    ...judgements
      .filter(({ word, sentence }) => word === undefined && /\b(agrees|differs)\b/.test(sentence))
      .map(({ id, sentence }) => `${id}: no word, but the sentence has one: ${sentence}`),
    ...judgements
      .filter(
        ({ word, lacks, sentence }) =>
          word === undefined &&
          lacks.length > 0 &&
          !/[Ff]irst:|[Nn]ot |no word yet|once .+ (is|are) known/.test(sentence),
      )
      .map(({ id, sentence }) => `${id}: the sentence does not say what comes first: ${sentence}`),
    ...explanations.flatMap(({ id, result, about, armId }) => {
      const told = judgements.some(
        (each) =>
          each.word !== undefined && isAgainstArm(each) && each.id.includes(id.replace('explanation:', '')),
      );
      return result?.againstMark !== undefined && !told
        ? [`${id} (${about.of} ${armId ?? ''}): the inference's word stands without a judgement`]
        : [];
    }),
  ];
};
