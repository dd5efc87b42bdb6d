import type { Component } from '../../../views/parts/part.ts';
import type { SetUpRatio } from '../../assessment/ratio/ratio.ts';
import { indicatorPlace } from '../../drawings/indicator-place.ts';
import { nextKind } from './reading-form.ts';

/** Where the plunger goes for the pass that is next. */
export const indicatorComponent = (found: SetUpRatio): Component => ({
  template: '/parts/drawing',
  data: indicatorPlace(nextKind(found) === 'lobe-lift' ? 'lifter' : 'retainer', 'indicator-place'),
});
