import { NOISE_QUESTIONS } from '../../../../shared/schemas/noise.ts';
import { WEIGHS } from '../../noise/effects.ts';
import { QUESTIONS } from '../noise/asked.ts';
import { asItStands } from '../noise/checks.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { MUST, type Need, need } from './need.ts';

/** Questions that were answered, and of the others those that would part causes that are left. */
export function ofNoise({ active, known, checks }: NoiseDetail): Need[] {
  if (!active) return [];
  const open = checks.map(({ code }) => code);
  return QUESTIONS.filter((code) => known.includes(code) || open.includes(code))
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
}
