import { type CallContext, valveName } from '../../call/context.ts';
import { ratioFigure, ratioName } from '../../call/ratio-text.ts';
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
