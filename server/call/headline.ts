import type { Component } from '../../views/parts/components.ts';

/** The answer in one sentence, the largest of its page, and what else is said of the same thing. */
export const headlineComponent = (
  label: string,
  sentence: string,
  more: readonly string[] = [],
): Component => ({ template: '/pages/call/headline', data: { label, sentence, more } });
