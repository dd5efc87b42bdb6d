/** Words of the record that judgements turn on. */
export type GoalName =
  | 'identify'
  | 'verify-ratio'
  | 'choose-ratio'
  | 'clearances-after-a-change'
  | 'geometry'
  | 'cam-timing'
  | 'adjuster'
  | 'noise-or-failure'
  | 'returned-part';
export type LifterName = 'solid-flat' | 'solid-roller' | 'hydraulic-flat' | 'hydraulic-roller';
export type MountingName = 'stud' | 'pedestal' | 'shaft';
export type BoltingName = 'through-centre' | 'perimeter';

/** The words a reading is judged by against another ratio, and a gap against its limit. */
export type RatioWord = 'agrees' | 'differs' | 'cannot-tell';
export type GapWord = 'clear' | 'close' | 'short';
export type JudgementWord = RatioWord | GapWord | 'odd';
