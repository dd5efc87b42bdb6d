import type { StepName } from '../../../../shared/steps.ts';
import type { CauseName } from '../../noise/causes.ts';
import type { Fact } from '../../noise/weigh.ts';
import type { AssessedQuestion } from '../assessment.ts';
import type { ValvePlace } from '../evidence.ts';
import type { MovedNext } from './moved-next.ts';

export type SaidFact = Pick<Fact, 'key' | 'text' | 'restsOn'>;

/** What it may come of, with what speaks for it and against it. */
export interface NoiseCandidate {
  readonly cause: CauseName;
  readonly said: string;
  readonly source: string;
  readonly for: readonly SaidFact[];
  readonly against: readonly SaidFact[];
  /** It was itself seen bad. */
  readonly seen: boolean;
  /** It has least against it, or was seen bad: still to be told apart from the others that have. */
  readonly remains: boolean;
}

/** A question or a reading that would part causes that remain. */
export interface NoiseCheck {
  /** The code of its question; `lash` and `lobe` are read. */
  readonly code: string;
  /** As a thing: `the stem’s tip`. */
  readonly thing: string;
  readonly sentence: string;
  readonly step: StepName;
  readonly turns: boolean;
  /** How it is come by: `asked or seen`, `parts off`, `read on the engine`. */
  readonly how: string;
  /** How many pairs of the causes that remain it parts, in the mean of what may be found. */
  readonly pairs: number;
  /** The two that stand first of those it parts; left out where it says what is asked at all, and parts none by itself. */
  readonly apart?: readonly [CauseName, CauseName];
}

export interface NoiseDetail {
  /** The call is about it, or something of it was answered. */
  readonly active: boolean;
  /** The one valve that it is, where it was told. */
  readonly place?: ValvePlace;
  /** A part that carries the gap was told to be damaged: as it was found it is not to be read any more. */
  readonly damaged: boolean;
  /** All of them in the order of the desk, asked or not. */
  readonly questions: readonly AssessedQuestion[];
  /** Codes of questions that were answered, or that the record answers. */
  readonly known: readonly string[];
  /** What was answered and read that speaks for or against a cause, each counted once. */
  readonly facts: readonly SaidFact[];
  readonly candidates: readonly NoiseCandidate[];
  /** How the candidates are in order, and that none of it is a verdict. */
  readonly howOrdered: string;
  /** What is not known yet and would part causes that remain: what is asked or seen first, what is turned last. */
  readonly checks: readonly NoiseCheck[];
  /** The two that stand first, and the check that comes first of those that would part them. */
  /** What an adjuster that had moved asks for. */
  readonly moved?: MovedNext;
  readonly nearest?: { readonly causes: readonly [string, string]; readonly check: NoiseCheck };
}
