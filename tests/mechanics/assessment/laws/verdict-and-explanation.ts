import type { AssessedExplanation } from '../../../../server/mechanics/assessment/assessment.ts';
import type { SetUpEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { type Assessed, type Law, passesIn, placeOf, setUpsNow } from './law.ts';

const TURNS: ReadonlySet<string> = new Set(['turn-too-many', 'turn-too-few', 'hand-read-backwards']);

/** Set-ups that an explanation speaks of. */
const setUpsOf = (assessed: Assessed, { setUpIds }: AssessedExplanation) =>
  setUpsNow(assessed).filter(({ id }) => setUpIds.includes(id));

/** A mistake that was ruled out for every reading is not listed. */
function impossible(assessed: Assessed, explanation: AssessedExplanation): string[] {
  const used = assessed.evidence.passes.filter(
    ({ id, kind }) => explanation.restsOn.includes(id) && kind.startsWith('valve-lift'),
  );
  if (used.length === 0 || !used.every(({ counted }) => counted)) return [];
  return (explanation.result?.explanations ?? [])
    .filter(({ causes }) => causes.some((cause) => TURNS.has(cause)))
    .map(({ needs }) => `${explanation.id}: lists a count that was looked at: ${needs}`);
}

/** The next reading is not one that was taken that way already. */
function taken(assessed: Assessed, explanation: AssessedExplanation): string[] {
  const own = setUpsOf(assessed, explanation);
  const isRead = (kind: string) => own.some((setUp) => passesIn(assessed.evidence, setUp, kind).length > 0);
  const action = explanation.result?.nextReading?.action;
  const lobes = own
    .filter(({ lobeSource }) => lobeSource === 'indicator')
    .flatMap((setUp) => passesIn(assessed.evidence, setUp, 'lobe-lift'));
  const done: Readonly<Record<string, boolean>> = {
    'lash-to-zero': own.some(({ lash }) => lash === 'zero'),
    'align-plunger': own.some(({ alignment }) => alignment === 'parallel'),
    'valve-lift-at-.200': isRead('valve-lift-at'),
    'light-spring-solid-lifter': own.some(
      ({ spring, lifter }) => spring === 'light' && (lifter === 'solid' || lifter === 'locked'),
    ),
    'lobe-at-lifter': lobes.length > 8,
    'rocker-on-another-valve': setUpsNow(assessed).some(
      (each) =>
        each.armId !== undefined &&
        each.armId === explanation.armId &&
        own.every((one) => placeOf(one) !== placeOf(each)) &&
        passesIn(assessed.evidence, each, 'valve-lift').length > 0,
    ),
  };
  return action !== undefined && done[action] === true
    ? [`${explanation.id}: ${action} was done already`]
    : [];
}

/** What comes next for a valve is no reading that it has already, told of when it may. */
function nextWasTaken(assessed: Assessed): string[] {
  const { next, explanations } = assessed.assessment;
  const [action = '', ...key] = next?.action.split(':') ?? [];
  const explanation = explanations.find(({ id }) => id === `explanation:${key.join(':')}`);
  if (explanation === undefined) return [];
  const read = setUpsOf(assessed, explanation).filter(
    ({ spring, alignment }) => spring !== 'running' && alignment !== 'leaning',
  );
  const taken: Readonly<Record<string, boolean>> = {
    'lash-to-zero': read.some((setUp) => setUp.lash === 'zero' && repeats(assessed, setUp)),
    'light-spring-solid-lifter': read.length > 0,
  };
  return taken[action] === true ? [`${explanation.id}: next is ${action}, which was read already`] : [];
}

/** Passes of one reading, none of them a turn or a zero off: a set-up of others is read again. */
function repeats({ assessment }: Assessed, { id }: SetUpEvidence): boolean {
  const detail = assessment.details.setUps.find(({ setUp }) => setUp.id === id);
  const said = /^(which spring|which lifter|whether the lash)/;
  return detail?.lacks.every((lack) => said.test(lack)) ?? false;
}

/** The headline's word is the inference's, and it speaks of the mark where there is one. */
function headlines({ assessment, evidence }: Assessed): string[] {
  return assessment.headlines.flatMap(({ id, judgementId, quantityId, sentence }) => {
    if (!id.startsWith('headline:ratio:')) return [];
    const judgement = assessment.judgements.find((each) => each.id === judgementId);
    const key = quantityId?.replace('arm-ratio:', '') ?? '';
    const explanation = assessment.explanations.find((each) => each.id === `explanation:${key}`);
    const stamp = evidence.arms.find((arm) => arm.id === explanation?.armId)?.ratioStamp ?? '';
    const marked = /^\d[.,]\d{1,3}$/.test(stamp);
    return [
      ...(judgement?.word !== explanation?.result?.againstMark
        ? [`${id}: ${judgement?.word}, the inference ${explanation?.result?.againstMark}`]
        : []),
      ...(marked && !sentence.includes('stamped on it')
        ? [`${id}: does not speak of the ${stamp} stamped on it`]
        : []),
    ];
  });
}

/** An arm that agrees with one name is not likelier another, and no name is offered that the ratio is far from. */
function names({ assessment }: Assessed): string[] {
  const { judgements, explanations, headlines } = assessment;
  const likeliest = explanations.flatMap(({ id, result }) => {
    const [best] = (result?.nominals ?? []).toSorted((a, b) => b.probability - a.probability);
    return best === undefined ? [] : [{ key: id.replace('explanation:', ''), ratio: best.ratio }];
  });
  return [
    ...judgements.flatMap(({ id, word, against }) => {
      if (word !== 'agrees' || (against.to !== 'mark' && against.to !== 'sold-as')) return [];
      const other = likeliest.find(({ key }) => id === `ratio:${key}:${against.to}`);
      return other !== undefined && Math.abs(other.ratio / against.ratio - 1) > 0.02
        ? [`${id}: agrees with ${against.ratio}, and is likelier a ${other.ratio}`]
        : [];
    }),
    ...[...headlines, ...judgements]
      .filter(({ sentence }) => /running (?:[6-9]|\d\d) %/.test(sentence))
      .map(({ id, sentence }) => `${id}: offers a name that is far off: ${sentence}`),
  ];
}

/** Within 2 % of what it is held to be; a thousandth is the last figure that is told. */
const WITHIN = 0.02;
const TOLD_TO = 0.0005 + 1e-9;

/** The word and the interval that stands beside it say the same. */
function wordAndInterval({ assessment }: Assessed): string[] {
  return assessment.judgements.flatMap(({ id, word, against }) => {
    if (against.to !== 'mark' && against.to !== 'sold-as') return [];
    const arm = id.replace(/^ratio:/, 'arm-ratio:').replace(/:(mark|sold-as)$/, '');
    const { low, high } = assessment.quantities.find((each) => each.id === arm) ?? {};
    if (word === undefined || low === undefined || high === undefined) return [];
    const [least, most] = [against.ratio * (1 - WITHIN), against.ratio * (1 + WITHIN)];
    const inside = low >= least - TOLD_TO && high <= most + TOLD_TO;
    const outside = high <= least + TOLD_TO || low >= most - TOLD_TO;
    const holds = word === 'agrees' ? inside : word === 'differs' ? outside : true;
    return holds ? [] : [`${id}: ${word}, and the interval is ${low} to ${high} of ${against.ratio}`];
  });
}

/** Passes that a sentence names: `pass 2`, `passes 1, 2 and 3`. */
const passesNamed = (sentence: string): string[] =>
  [...sentence.matchAll(/\bpass(?:es)? (\d+(?:, \d+)*(?: and \d+)?)/g)].flatMap(([, numbers = '']) =>
    numbers.split(/, | and /),
  );

/** What is next never names another pass as doubtful than the headline of the same valve does. */
function nextAndHeadline({ assessment: { headlines: told, next } }: Assessed): string[] {
  if (next?.step !== 'ratio' || next.about.of === 'build') return [];
  const named = passesNamed(next.sentence);
  const place = 'cylinder' in next.about ? placeOf(next.about) : undefined;
  const here = told.filter(
    ({ id, about }) => id.startsWith('headline:ratio:') && 'cylinder' in about && placeOf(about) === place,
  );
  return here.flatMap(({ id, sentence }) => {
    const doubted = passesNamed(sentence);
    const other = named.filter((pass) => !doubted.includes(pass));
    return doubted.length > 0 && other.length > 0
      ? [`${id}: names pass ${doubted.join(', ')}, and next is ${next.sentence}`]
      : [];
  });
}

/** Law 6: verdict and explanation agree. */
export const verdictAndExplanationAgree: Law = (assessed) => [
  ...headlines(assessed),
  ...wordAndInterval(assessed),
  ...nextAndHeadline(assessed),
  ...nextWasTaken(assessed),
  ...names(assessed),
  ...assessed.assessment.explanations.flatMap((each) => [
    ...impossible(assessed, each),
    ...taken(assessed, each),
  ]),
];
