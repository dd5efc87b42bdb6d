import type { ValvePlace } from './common.ts';

/* What was answered, noted, advised or promised. */

export interface AnswerEvidence {
  readonly id: string;
  readonly line: number;
  /** Id of the question of the assessment that it answers, where it was kept. */
  readonly questionId?: string;
  /** The word of the question it answers; empty where only its text was kept. */
  readonly code: string;
  readonly question: string;
  readonly answer: string;
  readonly found?: boolean;
  /** The amount that goes with it: how much lash was in it. */
  readonly value?: number;
  /** How far the plunger leaned, radians. */
  readonly lean?: number;
  readonly setUpId?: string;
  /** The one valve that it names. */
  readonly place?: ValvePlace;
}

/** What was noted, advised or promised. */
export interface NoteEvidence {
  readonly id: string;
  readonly line: number;
  readonly kind: 'note' | 'advice' | 'promise';
  readonly body: string;
  readonly done: boolean;
}
