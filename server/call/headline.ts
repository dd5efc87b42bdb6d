import { defined } from '../../shared/defined.ts';
import type { StepName } from '../../shared/steps.ts';
import type { HeadlineData } from '../../views/pages/call/pieces.ts';
import type { Component, ComponentOf } from '../../views/parts/components.ts';
import type { Assessment, Headline } from '../mechanics/assessment/assessment.ts';
import { keyOf } from '../mechanics/assessment/common/said.ts';
import type { Told } from '../mechanics/assessment/ratio/read/said-of-set-up.ts';
import type { CallContext } from './context.ts';

/** The first sentence of several, and those behind it. */
const SENTENCES = /^(.+?[.?!]”?) ([A-Z].*)$/s;

/** The answer alone, and what follows it in the same breath. */
export function breathsOf(text: string): { readonly sentence: string; readonly rest?: string } {
  const [, sentence = text, rest] = SENTENCES.exec(text) ?? [];
  return { sentence, ...defined({ rest }) };
}

/** Of the largest sentence of a page only the answer is large. */
function headlineComponent(data: HeadlineData): Component {
  return {
    template: '/pages/call/headline',
    data: { ...data, ...(data.lead ? breathsOf(data.sentence) : {}) },
  };
}

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

/** The answers of a step in one sentence each; of one subject alone where its key is given. */
export const stepHeadlines = ({ assessment }: CallContext, name: StepName, subject?: string): Component[] =>
  headlineComponents(
    assessment,
    assessment.headlines.filter(
      ({ step, about }) => step === name && (subject === undefined || keyOf(about) === subject),
    ),
  );

/** One answer by its id, where it is told. */
export const headlineNamed = ({ assessment }: CallContext, wanted: string | undefined): Component[] =>
  headlineComponents(
    assessment,
    assessment.headlines.filter(({ id }) => id === wanted),
  );

/** Sentences about one thing, the first of them as the answer; below each what it only counts of what is lacking. */
export const sentenceComponents = (told: readonly Told[]): Component[] =>
  told.map(({ sentence, more }, index) => headlineComponent({ sentence, lacks: more, lead: index === 0 }));

/** The answer of a page, and its slots without it. */
export interface LeadParts {
  readonly lead?: HeadlineData;
  readonly slots: readonly Component[];
}

const isLead = (slot: Component): slot is ComponentOf<'/pages/call/headline'> =>
  slot.template === '/pages/call/headline' && slot.data.lead === true;

/** Takes the answer out of the slots of a page, to stand above them. */
export function withLead(slots: readonly Component[]): LeadParts {
  const found = slots.find(isLead);
  if (found === undefined) return { slots };
  return { lead: found.data, slots: slots.filter((slot) => slot !== found) };
}
