import type { computation as ratioAtFullLift } from '../../../computations/ratio-at-full-lift.ts';
import type { computation as ratioThroughLift } from '../../../computations/ratio-through-lift.ts';
import type { PassEvidence, SetUpEvidence } from '../../evidence.ts';

/** What a pass is of, where it is read up to full lift. */
export type PassKind = 'lobe-lift' | 'valve-lift';

export type RatioInput = Parameters<typeof ratioAtFullLift.compute>[0];
export type RatioResult = ReturnType<typeof ratioAtFullLift.compute>;
export type ThroughLiftInput = Parameters<typeof ratioThroughLift.compute>[0];
type ThroughLiftResult = ReturnType<typeof ratioThroughLift.compute>;

/** A pass of a set-up, and why it is in no figure where it is not. */
export interface PassDetail
  extends Pick<PassEvidence, 'kind' | 'pass' | 'value' | 'zeroReturn' | 'atLobeLift' | 'counted' | 'readAs'> {
  readonly entryId: string;
  /** Left out where the pass is in the figures. */
  readonly aside?: { readonly code: AsideCode; readonly sentence: string };
}
export type AsideCode = 'turn-apart' | 'zero-off' | 'no-lift' | 'read-again';

/** What the valve moved, and what is in it. SI. */
export interface LiftDetail {
  /** Mean of the passes that are used, as read. */
  readonly read: number;
  /** `in`: the lash was left in the reading. */
  readonly lash: 'in' | 'out' | 'not-said';
  /** Lash at zero: the lift as read, or with the lash put back. Left out where its size is not known. */
  readonly gross?: { readonly value: number; readonly basis: 'measured' | 'calculated' };
  /** What the valve does in running. */
  readonly net?: {
    readonly value: number;
    readonly basis: 'measured' | 'calculated';
    readonly lashTakenOff?: number;
  };
}

export interface LobeDetail {
  readonly source: SetUpEvidence['lobeSource'];
  /** Mean of the passes, or the card's figure. */
  readonly value?: number;
  /** The other set-up of this valve that its passes were read in. */
  readonly from?: { readonly setUpId: string; readonly number: number };
  readonly entryIds: readonly string[];
}

/** A nominal beside the interval of a set-up: no verdict, which is told of the arm alone. */
export interface NominalRow {
  readonly ratio: number;
  /** What the call has named it as. */
  readonly named?: 'mark' | 'sold-as' | 'planned';
  /** The 95 % interval of the reading holds it. */
  readonly inside: boolean;
  /** Valve lift that it needs on this lobe. */
  readonly needsValveLift: number;
}

export interface NominalsDetail {
  /** Those that are near, and what the call has named, from the lowest. */
  readonly rows: readonly NominalRow[];
  /** How many more of the list lie further off. */
  readonly others: number;
}

export interface ThroughLiftDetail {
  readonly input?: ThroughLiftInput;
  readonly result?: ThroughLiftResult;
  readonly lacks: readonly string[];
}

/** Figures of one set-up, for tables and drawings: how it was read, what counts, and what comes of it. */
export interface SetUpDetail {
  /** As it is known now: answers and what was learnt late are in it. */
  readonly setUp: SetUpEvidence;
  readonly armName?: string;
  /** The arm was not named for it, but no other was ever named on this valve. */
  readonly armTaken: boolean;
  readonly passes: readonly PassDetail[];
  /** What it is read for next. */
  readonly reads: PassKind;
  readonly lobe: LobeDetail;
  readonly lift?: LiftDetail;
  readonly input?: RatioInput;
  /** With its budget. */
  readonly result?: RatioResult;
  /** Nominals beside its interval: a table beside the headline, never the headline. */
  readonly nominals?: NominalsDetail;
  readonly quantityId: string;
  readonly throughLift: ThroughLiftDetail;
  /** Without these no word stands against it. */
  readonly lacks: readonly string[];
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
  readonly questionIds: readonly string[];
}
