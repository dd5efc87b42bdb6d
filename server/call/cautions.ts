import { turningCaution } from '../mechanics/cam/caution.ts';
import { shortCaution } from '../mechanics/consequences/cautions.ts';
import { makerFirst } from '../mechanics/springs/caution.ts';

/** Said by a printed sheet itself, in its stop and in its own cautions. */
export const SAID_BY_THE_SHEET: readonly string[] = [turningCaution, makerFirst, shortCaution];
