import type { ValveName } from '../../../shared/schemas/words.ts';
/** A line of a valve's lash log; lengths in metres, in the order of the days they are of. */
export interface LashLine {
  readonly cylinder: number;
  readonly valve: ValveName;
  /** The gap: one figure, or what two gauges leave of it. */
  readonly gap: { readonly low?: number | undefined; readonly high?: number | undefined };
  readonly moment: 'found' | 'set';
  readonly engine: 'not-said' | 'cold' | 'hot';
  readonly nut: 'not-looked' | 'held' | 'moved';
}

/** What became of a gap since it was last set, or first found. */
export interface LashGrowth {
  readonly cylinder: number;
  readonly valve: ValveName;
  /** The least and the most it can have grown by; negative where it closed. */
  readonly low?: number | undefined;
  readonly high?: number | undefined;
  readonly nut: LashLine['nut'];
  /** One hot and one cold: the two are not set against each other. */
  readonly heatDiffers: boolean;
  /** Both heats are in the log. */
  readonly heatsSaid?: true | undefined;
  /** It had been set again after it had grown once before, and has grown again. */
  readonly again: boolean;
  /** The most that it is known to have grown by before it was last set, where that was over the limit [m]. */
  readonly before?: number | undefined;
}

export interface LashQuestion {
  readonly code:
    | 'lash-grew'
    | 'lash-grew-everywhere'
    | 'lash-closed'
    | 'lash-closed-nut'
    | 'lash-heat-differs'
    | 'lash-heat-unsaid';
  readonly cylinder?: number;
  readonly valve?: ValveName;
  readonly ask: string;
  /** What its id is made of, where its words change with what is known of the engine. */
  readonly knownBy?: string;
  readonly size: string;
  readonly test: string;
}
