import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { withMountingAnswered } from '../../../../server/mechanics/assessment/marks/mounting.ts';
import type { NoiseDetail } from '../../../../server/mechanics/assessment/noise/detail.ts';
import { causesOf } from '../../../../server/mechanics/assessment/noise/of-gear.ts';
import { LOCKING, WEAR } from '../../../../server/mechanics/noise/causes.ts';
import type { Law } from './law.ts';

/** Answers to one question, in the order in which they were given. */
const told = ({ answers }: Evidence, code: string): string[] =>
  answers
    .filter((each) => (each.questionId?.split(':')[1] ?? each.code) === code)
    .toSorted((a, b) => a.line - b.line)
    .map(({ answer }) => answer);

/** Every cause once, ordered by what was seen bad and by counts; those that remain have least against them, or were seen. */
function orderOf(evidence: Evidence, { candidates }: NoiseDetail): string[] {
  const times = (name: string) => candidates.filter(({ cause }) => cause === name).length;
  // Valve and seat are a cause of a gap that closed alone.
  const missing = causesOf(withMountingAnswered(evidence)).filter((name) =>
    name === 'seat' ? times(name) > 1 : times(name) !== 1,
  );
  const least = Math.min(...candidates.map(({ against }) => against.length));
  const wrong = candidates.filter(
    ({ against, seen, remains }) => remains !== (seen || against.length === least),
  );
  const turned = candidates.filter((each, index) => {
    const next = candidates[index + 1];
    if (next === undefined || (each.seen && !next.seen)) return false;
    if (!each.seen && next.seen) return true;
    if (each.against.length < next.against.length) return false;
    return each.against.length > next.against.length || each.for.length < next.for.length;
  });
  return [
    ...missing.map((name) => `the cause ${name} does not stand once`),
    ...wrong.map(({ cause }) => `${cause} remains by another rule than what is against it`),
    ...turned.map(({ cause }) => `${cause} stands before one that has less against it or more for it`),
  ];
}

/** A part that the engine has none of is no cause: no stud under a bucket, no pushrod under a cam. */
function ofOtherEngines({ engine: { gear = 'pushrod' } }: Evidence, { candidates }: NoiseDetail): string[] {
  if (gear === 'pushrod') return [];
  return candidates
    .filter(({ cause }) => cause === 'stud' || cause === 'stud-top' || cause === 'pushrod')
    .map(({ cause }) => `${cause} is a cause in an engine with a ${gear}`);
}

/** Each fact counts once, and never for and against one cause. */
function factsOf({ facts, candidates }: NoiseDetail): string[] {
  const keys = facts.map(({ key }) => key);
  const twice = keys.filter((key, index) => keys.indexOf(key) !== index);
  const both = candidates.filter((each) =>
    each.for.some(({ key }) => each.against.some((other) => other.key === key)),
  );
  return [
    ...twice.map((key) => `the fact ${key} counts twice`),
    ...both.map(({ cause }) => `a fact is for and against ${cause}`),
  ];
}

/** A desk’s rule (common practice, no published source): a nut that moved is the lock, one that held is not. */
function nutOf(evidence: Evidence, { candidates }: NoiseDetail): string[] {
  // Answer and lash log say otherwise: neither counts until a person has said which.
  if (evidence.lash.some(({ standing, nut }) => standing && nut !== 'not-looked')) return [];
  const nut = told(evidence, 'noise-nut').at(-1);
  const cleared = { moved: WEAR, off: WEAR, held: LOCKING }[nut ?? ''] ?? [];
  return candidates
    .filter(({ cause }) => cleared.some((name) => name === cause))
    .filter(({ against }) => !against.some(({ key }) => key === 'noise-nut'))
    .map(({ cause }) => `the nut ${nut}, and nothing of it is against ${cause}`);
}

const SIGNS = ['metal', 'broken', 'tight', 'contact'];

/** Of a part: which answers stop it. Common practice, no published source. */
const DAMAGED: readonly (readonly [code: string, answer: string])[] = [
  ['noise-nut', 'off'],
  ['noise-stud', 'moves'],
  ['noise-pushrod', 'bent'],
  ['noise-roller', 'pin-moved'],
  ['noise-trunnion', 'missing'],
];

/** Whatever was told later, a sign of damage stops it until a person lifts it. */
function signsOf(evidence: Evidence, stopIds: readonly string[]): string[] {
  if ((evidence.call.stopsLifted ?? []).length > 0) return [];
  const wanted = [
    ...told(evidence, 'noise-signs').flatMap((answer) =>
      SIGNS.includes(answer) ? [`stop:sign-of-damage:${answer}`] : [],
    ),
    ...DAMAGED.flatMap(([code, answer]) =>
      told(evidence, code).includes(answer) ? [`stop:part-damaged:${code}:${answer}`] : [],
    ),
  ];
  return wanted.filter((id) => !stopIds.includes(id)).map((id) => `told, and it is not stopped: ${id}`);
}

/** Law 3 for noise: causes are candidates with their evidence, never a verdict; a sign of damage stops it. */
export const aCauseIsNoVerdict: Law = ({ evidence, assessment }) => {
  const { details, headlines, judgements, stop } = assessment;
  return [
    ...orderOf(evidence, details.noise),
    ...ofOtherEngines(evidence, details.noise),
    ...factsOf(details.noise),
    ...nutOf(evidence, details.noise),
    ...signsOf(
      evidence,
      stop.map(({ id }) => id),
    ),
    ...headlines
      .filter(({ step, sentence }) => step === 'noise' && !sentence.startsWith('No verdict. '))
      .map(({ sentence }) => `told as a verdict: ${sentence}`),
    ...headlines
      .filter(({ step, sentence }) => step === 'noise' && sentence.split(' ').length > 28)
      .map(({ sentence }) => `too long to be said in one go: ${sentence}`),
    ...judgements.filter(({ id }) => /noise|cause/.test(id)).map(({ id }) => `a verdict on a cause: ${id}`),
  ];
};
