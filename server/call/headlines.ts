import type { Component } from '../../views/parts/components.ts';
import type { Assessment, Headline } from '../mechanics/assessment/assessment.ts';

/** Headlines with what their judgements still need; the first one is the largest sentence of its page. */
export const headlineComponents = (
  { judgements }: Assessment,
  headlines: readonly Headline[],
  { lead = true }: { readonly lead?: boolean } = {},
): Component[] =>
  headlines.map(({ sentence, judgementId }, index) => ({
    template: '/pages/call/headline',
    data: {
      sentence,
      lacks: judgements.find(({ id }) => id === judgementId)?.lacks ?? [],
      ...(lead && index === 0 ? { lead: true } : {}),
    },
  }));

/** Sentences about one thing, the first of them as the answer; what is lacking is said in each. */
export const sentenceComponents = (sentences: readonly string[]): Component[] =>
  sentences.map((sentence, index) => ({
    template: '/pages/call/headline',
    data: { sentence, lacks: [], ...(index === 0 ? { lead: true } : {}) },
  }));
