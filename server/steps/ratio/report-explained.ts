import type { Component } from '../../../views/parts/components.ts';
import type { Explained } from '../../assessment/ratio/explain.ts';
import type { SetUpRatio } from '../../assessment/ratio/ratio.ts';
import { saidComponents, withoutNote } from '../../call/report-parts.ts';
import { tableComponent } from '../../web/components.ts';
import { ASK } from './cause-words.ts';
import { explanationsTable, ratioSentence } from './explanations.ts';
import { nextSentence } from './next-reading.ts';

/** The likeliest few; the step shows more. */
const MOST = 3;

/** What would have to be true, and the next reading worth taking. */
export function explainedComponents(found: SetUpRatio, explained: Explained | undefined): Component[] {
  if (explained === undefined) return [];
  const likely = { ...explained, explanations: explained.explanations.slice(0, MOST) };
  const next = nextSentence(explained);
  return [
    ...saidComponents('What would explain the readings', [
      ratioSentence(explained, found.setUp.method.spring),
      ...(next === undefined ? [] : [next]),
    ]),
    tableComponent(withoutNote(explanationsTable(likely))),
  ];
}

/** The next reading of a set-up as one sentence. */
export const nextOfSetUp = ({ nextReading: next }: Explained): string | undefined =>
  next === undefined ? undefined : `${ASK[next.action]} About ${next.minutes} min.`;
