import { VALVE_GEARS } from '../../shared/schemas/words.ts';
import type { Component } from '../../views/parts/components.ts';
import type { CallContext } from './context.ts';
import { listComponents } from './report-parts.ts';

/** What is not worked out for the valve gear of this engine, each with what to do instead. */
export const notCoveredTexts = ({ assessment }: CallContext): string[] =>
  assessment.notCovered.map(({ sentence, instead }) => `${sentence} Instead: ${instead}`);

export const notCoveredComponents = (context: CallContext): Component[] =>
  listComponents(
    `Not covered: ${VALVE_GEARS[context.assessment.details.gear.gear].toLowerCase()}`,
    notCoveredTexts(context),
  );
