import { NOISE_QUESTIONS } from '../../../../shared/schemas/noise.ts';
import { WEIGHS } from '../../noise/effects.ts';
import { QUESTIONS } from '../noise/answers.ts';
import { asItStands } from '../noise/checks.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { MUST, type Need, need } from './need.ts';

/** What makes the other answers mean anything: a hydraulic lifter has no lash. */
const lifter = (known: readonly string[]): Need =>
  need(
    'lifter',
    'whether the lifters are hydraulic or solid',
    'Ask whether the lifters are hydraulic or solid.',
    known.includes('lifter'),
    { ...MUST, askAtBench: 'Say whether the lifters are hydraulic or solid.' },
  );

/** Questions that were answered, and of the others those that would tell causes apart that are left. */
export function ofNoise({ active, known, checks }: NoiseDetail): Need[] {
  if (!active) return [];
  const open = checks.map(({ code }) => code);
  const questions = QUESTIONS.filter((code) => known.includes(code) || open.includes(code))
    .toSorted((a, b) => open.indexOf(a) - open.indexOf(b))
    .map((code) =>
      need(
        code,
        WEIGHS[code].thing,
        NOISE_QUESTIONS[code].ask,
        known.includes(code),
        checks.some((check) => check.code === code && asItStands(check)) ? MUST : {},
      ),
    );
  return [lifter(known), ...questions];
}
