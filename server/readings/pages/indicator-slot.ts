import type { Slot } from '../../../views/parts/part.ts';
import { indicatorPlace } from '../../drawings/indicator-place.ts';
import type { SetUpRatio } from '../ratio.ts';
import { nextKind } from './reading-form.ts';

/** Where the plunger goes for the pass that is next. */
export const indicatorSlot = (found: SetUpRatio): Slot => ({
  template: '/parts/drawing',
  data: indicatorPlace(nextKind(found) === 'lobe-lift' ? 'lifter' : 'retainer', 'indicator-place'),
});
