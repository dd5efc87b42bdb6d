import type { PartName } from '../parts.ts';
import { adjusterForm } from './adjuster.ts';
import { eventsForm } from './events.ts';
import type { PartForm } from './part-form.ts';
import { peakForm } from './peak.ts';
import { stopForm } from './stop.ts';
import { sweepForm } from './sweep.ts';

/** The parts that have a form in the words of the bench; the others have the one their schema makes. */
export const PART_FORMS: Readonly<Partial<Record<PartName, PartForm>>> = {
  'roller-sweep': sweepForm,
  'top-dead-centre': stopForm,
  centreline: peakForm,
  events: eventsForm,
  adjuster: adjusterForm,
};
