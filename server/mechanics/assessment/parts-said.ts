import type { AssessedQuestion, NotToRun } from './assessment.ts';
import type { PartSaid } from './common/part-said.ts';
import { contactQuestions } from './contact-asked.ts';
import type { Details } from './details.ts';
import type { Evidence } from './evidence.ts';
import { figureQuestions } from './figures/figures.ts';
import { pushrodsPart } from './figures/pushrods.ts';
import { guessedShort } from './gaps/guessed.ts';
import { shortBefore } from './gaps/short-before.ts';
import { gearDetail, gearQuestions } from './gear/gear.ts';
import { noSuchValves } from './gear/no-such-valve.ts';
import { lashPart } from './lash/lash.ts';
import { changeOf, liftsRead } from './lifts-read.ts';
import { marksPart } from './marks/marks.ts';
import { noisePart } from './noise/noise.ts';
import { noiseNotSet } from './noise/not-set.ts';
import { armMarkQuestions } from './part/arm-marks.ts';
import { partPart } from './part/part.ts';
import { ratioPart } from './ratio/ratio.ts';
import { scansPart } from './scans/scans.ts';
import { liftedGaps, stopReasons } from './stop.ts';
import { timingPart } from './timing/timing.ts';
import { workingsPart } from './workings/workings.ts';

/** All that the parts say, each list in the order of the parts. */
const together = (parts: readonly PartSaid<unknown>[]) => ({
  quantities: parts.flatMap(({ quantities }) => quantities),
  judgements: parts.flatMap(({ judgements }) => judgements),
  questions: parts.flatMap(({ questions }) => questions),
  headlines: parts.flatMap(({ headlines }) => headlines),
});

export type PartsSaid = ReturnType<typeof partsSaid>;

/** Each part with what it says. What is told of a ratio waits for the stops of the others. */
export function partsSaid(evidence: Evidence) {
  const lifts = liftsRead(evidence);
  const { sheet } = lifts;
  const scans = scansPart(lifts.gapped);
  const change = changeOf(evidence, lifts);
  const marks = marksPart(evidence, lifts.ratios);
  const timing = timingPart(evidence);
  const lash = lashPart(evidence);
  const pushrods = pushrodsPart(evidence);
  const workings = workingsPart(evidence, [...lash.work.notSet, ...noiseNotSet(evidence, lash.detail)]);
  const part = partPart(evidence);
  const raisedElsewhere = [...lash.questions, ...marks.questions];
  const noise = noisePart(evidence, { lash: lash.detail, sheet: sheet.detail, raised: raisedElsewhere });
  const others = [sheet, scans, change, marks, timing, lash, pushrods, workings, part, noise];
  const raised = others.flatMap((each) => each.stop);
  const stop = stopReasons(evidence, raised);
  const ratio = ratioPart(lifts.ofThen, lifts.read, part.detail, stop);
  const said = together([ratio, ...others]);
  return {
    lifts,
    sheet,
    scans,
    change,
    marks,
    timing,
    lash,
    workings,
    part,
    noise,
    ratio,
    raised,
    stop,
    said,
  };
}

/** Why nobody runs it as it is, or fits what is planned. */
export const notToRunOf = (evidence: Evidence, parts: PartsSaid): NotToRun[] => [
  ...parts.change.notToRun,
  ...parts.lash.notToRun,
  ...guessedShort(parts.lifts.gapped),
  ...shortBefore(parts.lifts.gapped),
  ...parts.noise.notToRun,
  ...parts.sheet.notToRun,
  ...liftedGaps(evidence, parts.raised),
  ...parts.ratio.notToRun,
];

/** What two parts ask of the same readings is asked once. */
const onceById = (questions: readonly AssessedQuestion[]): AssessedQuestion[] =>
  questions.filter(({ id }, at) => questions.findIndex((each) => each.id === id) === at);

/** What is asked: by the parts, and of the engine and its entries as a whole. */
export const questionsOf = (evidence: Evidence, parts: PartsSaid): AssessedQuestion[] =>
  onceById(questionsAsked(evidence, parts));

const questionsAsked = (evidence: Evidence, { said, stop, raised }: PartsSaid): AssessedQuestion[] => [
  // What everything is worked out from is asked before what comes out of it.
  ...figureQuestions(evidence),
  ...said.questions,
  ...gearQuestions(evidence),
  // Lifting a stop does not say which of the two is so.
  ...contactQuestions(evidence, [
    ...stop,
    ...raised.filter(({ id }) => stop.every((each) => each.id !== id)),
  ]),
  ...noSuchValves(evidence),
  ...armMarkQuestions(evidence),
];

/** The figures of each part, for tables and drawings. */
export const detailsOf = (evidence: Evidence, parts: PartsSaid): Details => ({
  gear: gearDetail(evidence),
  setUps: parts.ratio.detail,
  sheet: parts.sheet.detail,
  scans: parts.scans.detail,
  change: parts.change.detail,
  marks: parts.marks.detail,
  lash: parts.lash.detail,
  timing: parts.timing.detail,
  workings: parts.workings.detail,
  noise: parts.noise.detail,
  parts: parts.part.detail,
});
