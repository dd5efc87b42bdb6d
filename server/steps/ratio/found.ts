import { type CallContext, valveName } from '../../call/context.ts';
import { ratioFigure, ratioName } from '../../call/ratio-text.ts';
import { ASK } from './cause-words.ts';
import type { Explanations } from './load.ts';
import { verdictOf } from './ratio-answer.ts';

const WORDS: Readonly<Record<string, string>> = {
  agrees: 'agrees',
  differs: 'differs',
  'cannot-tell': 'cannot tell',
};

/** Each set-up's ratio by its own name; only a light-spring one is set against a stamp. */
export function foundRatios({ ratios }: CallContext): string[] {
  return ratios.flatMap(({ setUp, result }) => {
    if (result === undefined) return [];
    const verdict = verdictOf(result, setUp.method.spring);
    const against =
      verdict === undefined
        ? ''
        : `; ${WORDS[verdict.word] ?? verdict.word} ${String(verdict.text ?? '').replace(/\.$/, '')}`;
    return [`${ratioName(setUp.method.spring)}, ${valveName(setUp)}: ${ratioFigure(result).text}${against}.`];
  });
}

/** Where only a running-spring ratio is there, nothing can be set against the stamp yet. */
function lightSpring({ ratios }: CallContext): string[] {
  const read = ratios.filter(({ result }) => result !== undefined);
  return read.length > 0 && read.every(({ setUp }) => setUp.method.spring !== 'light')
    ? [ASK['light-spring-solid-lifter']]
    : [];
}

/** The next reading worth taking on the newest set-up that something would explain. */
export function nextOnEngine(context: CallContext, explanations: Explanations): string[] {
  const newest = context.setUps.findLast(({ id }) => explanations.has(id));
  const next = newest === undefined ? undefined : explanations.get(newest.id)?.nextReading;
  return next === undefined ? lightSpring(context) : [`${ASK[next.action]} About ${next.minutes} min.`];
}
