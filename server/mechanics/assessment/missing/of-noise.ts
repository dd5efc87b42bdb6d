import { adjusterKind } from '../../lash/adjuster-words.ts';
import { LIFTER_WORDS } from '../../noise/lifter-words.ts';
import { noiseWords } from '../../noise/noise-words.ts';
import type { Evidence } from '../evidence.ts';
import { QUESTIONS } from '../noise/answers.ts';
import { asItStands } from '../noise/checks.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { MUST, type Need, need } from './need.ts';

/** What makes the other answers mean anything: a hydraulic lifter has no lash. */
const lifter = ({ gear = 'pushrod' }: Evidence['engine'], known: readonly string[]): Need => {
  const { thing } = LIFTER_WORDS[gear];
  return need('lifter', thing, `Ask ${thing}.`, known.includes('lifter'), {
    ...MUST,
    askAtBench: `Say ${thing}.`,
  });
};

/** Whether there is a stud to ask about. */
const mounting = (known: readonly string[]): Need =>
  need(
    'mounting',
    'how the rockers are mounted',
    'Ask whether the rockers are on studs, on pedestals or on a shaft.',
    known.includes('mounting'),
    { ...MUST, askAtBench: 'Say whether the rockers are on studs, on pedestals or on a shaft.' },
  );

/** Questions that were answered, and of the others those that would tell causes apart that are left. */
export function ofNoise(
  { engine }: Pick<Evidence, 'engine'>,
  { active, known, checks }: NoiseDetail,
): Need[] {
  if (!active) return [];
  const open = checks.map(({ code }) => code);
  const questions = QUESTIONS.filter((code) => known.includes(code) || open.includes(code))
    .toSorted((a, b) => open.indexOf(a) - open.indexOf(b))
    .map((code) =>
      need(
        code,
        noiseWords(code, adjusterKind(engine)).thing,
        noiseWords(code, adjusterKind(engine)).ask,
        known.includes(code),
        checks.some((check) => check.code === code && asItStands(check)) ? MUST : {},
      ),
    );
  return [lifter(engine, known), mounting(known), ...questions];
}
