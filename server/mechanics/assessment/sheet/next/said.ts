import type { EnteredAt, Subject } from '../../assessment.ts';

/** Something that the sheet asks to be done. */
export interface Said {
  readonly action: string;
  readonly about: Subject;
  readonly sentence: string;
  readonly reason: string;
  /** The step it is done in; left out, the sheet. */
  readonly step?: 'parts' | 'cam';
  /** Where on that step it is entered. */
  readonly at?: EnteredAt;
  /** Left out, the engine is turned for it. */
  readonly turns?: false;
}
