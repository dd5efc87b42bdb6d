import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import type { ShownSetUp } from '../../call/shown-set-up.ts';
import { indicatorPlace } from '../../drawings/indicator-place.ts';
import { nextKind } from './reading-form.ts';

/** Where the plunger goes for the pass that is next; no lifter is drawn for an engine that has none in a bore. */
export function indicatorComponents(context: CallContext, found: ShownSetUp): Component[] {
  const place = nextKind(context, found) === 'lobe-lift' ? 'lifter' : 'retainer';
  const { gear } = context.assessment.details.gear;
  if (place === 'lifter' && gear !== 'pushrod') return [];
  return [{ template: '/parts/drawing', data: indicatorPlace(place, 'indicator-place') }];
}
