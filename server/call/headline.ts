import type { HeadlineData } from '../../views/pages/call/pieces.ts';
import type { Component } from '../../views/parts/components.ts';
import type { Assessment, Headline } from '../mechanics/assessment/assessment.ts';

/** The answer in one sentence, the largest of its page, and what else is said of the same thing. */
export const headlineComponent = (data: HeadlineData): Component => ({
  template: '/pages/call/headline',
  data,
});

/** Headlines with what their judgements still need; the first one is the largest sentence of its page. */
export const headlineComponents = (
  { judgements }: Assessment,
  headlines: readonly Headline[],
  { lead = true }: { readonly lead?: boolean } = {},
): Component[] =>
  headlines.map(({ sentence, judgementId }, index) =>
    headlineComponent({
      sentence,
      lacks: judgements.find(({ id }) => id === judgementId)?.lacks ?? [],
      lead: lead && index === 0,
    }),
  );
