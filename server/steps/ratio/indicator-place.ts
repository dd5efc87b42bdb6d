import type { Component } from '../../../views/parts/components.ts';
import type { ShownSetUp } from '../../call/shown-set-up.ts';
import { indicatorPlace } from '../../drawings/indicator-place.ts';
import { nextKind } from './reading-form.ts';

/** Where the plunger goes for the pass that is next. */
export const indicatorComponent = (found: ShownSetUp): Component => ({
  template: '/parts/drawing',
  data: indicatorPlace(nextKind(found) === 'lobe-lift' ? 'lifter' : 'retainer', 'indicator-place'),
});
