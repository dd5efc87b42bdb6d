import type { SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { valveName } from '../../call/context.ts';

/** `Gaps on 1 intake: short: piston to valve; close: room to coil bind.` */
export const foundGaps = (all: readonly SetUpConsequences[]): string[] =>
  all.flatMap((found) => {
    const named = (word: string) =>
      found.gaps.filter(({ verdict }) => verdict === word).map(({ title }) => title.toLowerCase());
    const told = (['short', 'close', 'clear'] as const).flatMap((word) =>
      named(word).length === 0 ? [] : [`${word}: ${named(word).join(', ')}`],
    );
    return told.length === 0 ? [] : [`Gaps on ${valveName(found.found.setUp)}: ${told.join('; ')}.`];
  });

export const unknownGaps = (all: readonly SetUpConsequences[]): string[] =>
  all.flatMap(({ gaps, found }) => {
    const unknown = gaps
      .filter(({ verdict }) => verdict === undefined)
      .map(({ title }) => title.toLowerCase());
    return unknown.length === 0
      ? []
      : [`Gaps not known on ${valveName(found.setUp)}: ${unknown.join(', ')}.`];
  });
