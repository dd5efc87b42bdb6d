import type { Registered } from '../../compute/registry.ts';
import type { Working } from '../../records/workings/workings.ts';
import type { CallContext } from '../context.ts';
import type { Guide, RejectedForm, StepBody } from '../forms.ts';
import type { PartForm } from './part-form.ts';

/** What every step that computes has loaded. */
export interface WorkedData {
  readonly workings: readonly Working[];
  readonly computations: ReadonlyMap<string, Registered>;
}

export interface PartView {
  readonly context: CallContext;
  readonly rejected: RejectedForm | undefined;
  /** The step it is a part of. */
  readonly step: string;
}

/** One part of a step that measures or computes several things, in the order they are worked through. */
export interface WorkedPart<Loaded extends WorkedData> {
  readonly name: string;
  readonly title: string;
  /** What is asked at the desk and how it is done at the bench. */
  readonly words: { readonly say: string; readonly how: string };
  /** It takes turning the engine or its adjusters: under a stop its words, drawings and form give way. */
  readonly turns: boolean;
  /** What is minded before it is turned, where that is more than wherever an engine is turned. */
  readonly guide?: Guide;
  /** Its form, where it is not that of a computation. */
  readonly form?: string;
  /** The computation that its form keeps, with the form in the words of the bench if it has one. */
  readonly computed?: ComputedPart;
  /** What is kept of it, in a few words; empty where nothing is. */
  kept(loaded: Loaded): string;
  body(loaded: Loaded, view: PartView): StepBody;
}

interface ComputedPart {
  readonly computation: string;
  readonly form?: PartForm;
}

/** A step made of such parts. */
export interface WorkedStep<Loaded extends WorkedData> {
  readonly name: string;
  readonly parts: readonly WorkedPart<Loaded>[];
  /** Each part feeds the next: said above the list of them. */
  readonly chained?: boolean;
  /** The part it opens with, where none is asked for. */
  opens(context: CallContext, loaded: Loaded): string;
}
