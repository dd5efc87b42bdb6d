import type { Fact } from './facts.examples.ts';
import { callFacts } from './facts.examples.ts';
import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface StepHeaderData {
  /** `step-title` when left out; the page's one heading. */
  readonly id?: string;
  readonly title: string;
  readonly position?: string;
  readonly facts?: readonly Fact[];
  /** What the desk asks the caller. */
  readonly say?: string;
}

export const stepHeader: Part<'/parts/step-header'> = {
  name: 'step-header',
  title: 'Head of a step',
  purpose: 'The action as the page’s heading, with the title block of the call below it.',
  template: '/parts/step-header',
  examples: [
    {
      title: 'At the desk',
      data: {
        title: 'Read the valve lift',
        facts: callFacts,
        say: 'Where does the small hand stand, and then the needle?',
      },
    },
    {
      title: 'At the bench',
      data: { id: 'step-bench', title: 'Read the valve lift', position: 'Cylinder 5, intake' },
    },
    {
      title: 'Long and hostile text',
      data: { id: 'step-hostile', title: `${LONG} ${HOSTILE}`, position: HOSTILE, say: HOSTILE },
    },
  ],
};
