import type { UnitSystem } from '../../../shared/quantities/units.ts';
import type { Goal } from '../../../shared/schemas/goals.ts';
import type { PushrodTaken, ValveGear } from '../../../shared/schemas/words.ts';
import type { SpringFigures } from '../consequences/types.ts';
import type { ValvePlace } from './evidence/common.ts';
import type { LobeCard, TakenOnEngine } from './evidence/engine.ts';
import type { HandPartEvidence, PartEvidence } from './evidence/parts.ts';
import type { AnswerEvidence, NoteEvidence } from './evidence/said.ts';
import type { ArmEvidence, PassEvidence, SetUpEvidence, SetUpStatementEvidence } from './evidence/set-ups.ts';
import type { LashEvidence, ScanEvidence, SheetEvidence, TipMarkEvidence } from './evidence/valves.ts';
import type { WorkingEvidence } from './evidence/workings.ts';
import type { FamilyEvidence } from './part/family.ts';
import type { BoltingName, LifterName, MountingName } from './words.ts';

export type * from './evidence/common.ts';
export type * from './evidence/engine.ts';
export type * from './evidence/parts.ts';
export type * from './evidence/said.ts';
export type * from './evidence/set-ups.ts';
export type * from './evidence/valves.ts';
export type * from './evidence/workings.ts';

/*
 * Everything that is known of one build, as it stands now: lengths in metres, loads in newtons, rates in newtons per
 * metre, angles in radians, ratios bare. What is not known is left out. Nothing here depends on the order in which it
 * was said: `line` is the number of an entry on the record, to cite it by, and no judgement may rest on it.
 */

export interface LimitEvidence {
  readonly value: number;
  readonly source: string;
}

export interface Evidence {
  readonly call: {
    readonly goal: Goal;
    /** What is said is said in; left out, inches. */
    readonly units?: UnitSystem;
    /** Set by a person, or by the first question of the call. */
    readonly hold?: { readonly reason: string; readonly line?: number; readonly since?: string };
    /** Stops that a person lifted: by name, and for the entry that had raised it. */
    readonly stopsLifted?: readonly { readonly stopId: string; readonly entryId?: string }[];
    readonly contact: 'not-asked' | 'none' | 'something';
    readonly engineState: 'not-asked' | 'runs' | 'has-run' | 'apart' | 'never-run';
    readonly closed: boolean;
  };
  readonly engine: {
    readonly cylinders?: number;
    /** Valves of each kind in a cylinder; left out, one. */
    readonly intakeValves?: number;
    readonly exhaustValves?: number;
    /** Left out, pushrods and rockers. */
    readonly gear?: ValveGear;
    readonly lifter?: LifterName;
    readonly mounting?: MountingName;
    readonly coverBolting?: BoltingName;
    readonly use?: 'street' | 'race';
    readonly rodMaterial?: 'steel' | 'aluminium';
    /** Lash shims that can be had, each there once. */
    readonly shimStock?: readonly number[];
    readonly studSize?: '5/16' | '3/8' | '7/16';
    readonly stroke?: number;
    readonly rodLength?: number;
    readonly pinOffset?: number;
    readonly valveAngle?: number;
    readonly firingOrder?: string;
    readonly bankOrder?: string;
  };
  readonly card: {
    readonly assumedRatio?: number;
    /** The heat that the lash on the card is for. */
    readonly lashAt?: 'cold' | 'hot';
    readonly intake: LobeCard;
    readonly exhaust: LobeCard;
  };
  readonly springs: SpringFigures;
  readonly rockers: {
    /** The ratio the rockers are sold as. */
    readonly soldAs?: number;
    /** The ratio of the rockers that are to be fitted, where the call is about a change. */
    readonly planned?: number;
    /** The same of the exhausts, where theirs is another. */
    readonly plannedExhaust?: number;
    /** As one side sees it: the other is to have another ratio. */
    readonly split?: true;
    /** Ratios that are thought of beside it. */
    readonly alsoPlanned?: readonly number[];
    /** What the shop's catalogue has of the family that they are sold under. */
    readonly family?: { readonly name: string; readonly nominalRatio: number };
    readonly pivotToTip?: number;
  };
  /** Lengths that were measured or told, with how. */
  readonly pushrods?: {
    readonly intake?: number;
    readonly exhaust?: number;
    readonly over?: 'ends' | 'gauge';
    readonly taken?: PushrodTaken;
  };
  readonly taken: { readonly intake: TakenOnEngine; readonly exhaust: TakenOnEngine };
  readonly arms: readonly ArmEvidence[];
  /** Which arm sits on which valve now. */
  readonly seats: readonly (ValvePlace & { readonly armId: string })[];
  /** Every valve that an arm was ever put on. */
  readonly sat?: readonly (ValvePlace & { readonly armId: string })[];
  /** As each was said before its first reading; what was put right since is in the statements. */
  readonly setUps: readonly SetUpEvidence[];
  readonly statements: readonly SetUpStatementEvidence[];
  readonly passes: readonly PassEvidence[];
  readonly sheet: readonly SheetEvidence[];
  readonly scans?: readonly ScanEvidence[];
  readonly lash: readonly LashEvidence[];
  readonly tipMarks: readonly TipMarkEvidence[];
  readonly part: readonly PartEvidence[];
  /** Parts that were named; the first needs no name. */
  readonly handParts?: readonly HandPartEvidence[];
  /** The shop's catalogue, where something was read of a part. */
  readonly families?: readonly FamilyEvidence[];
  readonly answers: readonly AnswerEvidence[];
  readonly workings: readonly WorkingEvidence[];
  readonly notes: readonly NoteEvidence[];
  /** Nominal ratios of the shop's catalogue. */
  readonly catalogueRatios: readonly number[];
  /** Limits in force by their name. */
  readonly limits: Readonly<Record<string, LimitEvidence>>;
}
