import type { StepName } from '../../shared/steps.ts';
import type { Component } from '../../views/parts/components.ts';
import type { Headline } from '../mechanics/assessment/assessment.ts';
import { keyOf } from '../mechanics/assessment/common/said.ts';
import type { CallContext } from './context.ts';

const headlineComponent = ({ sentence }: Headline): Component => ({
  template: '/pages/call/headline',
  data: { text: sentence },
});

/** The answers of a step in one sentence each; of one subject alone where its key is given. */
export const headlineComponents = (
  { assessment }: CallContext,
  name: StepName,
  subject?: string,
): Component[] =>
  assessment.headlines
    .filter(({ step, about }) => step === name && (subject === undefined || keyOf(about) === subject))
    .map(headlineComponent);
