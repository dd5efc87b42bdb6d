import { cautionComponent } from '../web/components.ts';
import type { Guide } from './forms.ts';

/** Goes with how a thing is done wherever the engine is turned for it: its first words are in sight before the act. */
export const TURNING_GUIDE: Guide = {
  summary: 'By hand at the crank bolt; any resistance: stop',
  slots: [
    cautionComponent(
      'by hand at the crank bolt only, never the starter; nobody in line with a spring, hands out of the belts. Any resistance: stop, back off, find out.',
    ),
  ],
};
