import type { UnitSystem } from '../../../shared/quantities/units.ts';
import type { Goal } from '../../../shared/schemas/goals.ts';
import type { PartTool } from '../../../shared/schemas/part-words.ts';
import type { LiftTool, LOBE_SOURCES, ValveGear, ValveName } from '../../../shared/schemas/words.ts';
import type { Nest } from '../springs/nested.ts';
import type { FamilyEvidence } from './part/family.ts';
import type { BoltingName, LifterName, MountingName } from './words.ts';
import type { SetEvidence } from './workings/evidence.ts';

/*
 * Everything that is known of one build, as it stands now: lengths in metres, loads in newtons, rates in newtons per
 * metre, angles in radians, ratios bare. What is not known is left out. Nothing here depends on the order in which it
 * was said: `line` is the number of an entry on the record, to cite it by, and no judgement may rest on it.
 */

export type Side = 'intake' | 'exhaust';
export type Spring = 'not-said' | 'light' | 'running';
export type LifterState = 'not-said' | 'solid' | 'locked' | 'hydraulic';
type LashState = 'not-said' | 'zero' | 'set';

export interface ValvePlace {
  readonly cylinder: number;
  readonly valve: ValveName;
}

/** An entry of the record. One that was replaced or struck out is shown and not judged. */
export interface EvidenceEntry {
  readonly id: string;
  readonly line: number;
  readonly standing: boolean;
}

export interface LobeCard {
  readonly lobeLift?: number;
  readonly valveLift?: number;
  readonly centreline?: number;
  readonly lash?: number;
  readonly durations?: readonly { readonly atLift: number; readonly duration: number }[];
}

/** Gaps that are taken once on the engine and that others are calculated from. */
export interface TakenOnEngine {
  readonly closedGapAtTdc?: number;
  readonly pistonFloor?: 'pocket' | 'flat';
  /** Rise of the lifter where valve and piston were found closest. */
  readonly lobeLiftAtClosest?: number;
  readonly pushrodToHead?: number;
}

export interface ArmEvidence {
  readonly id: string;
  readonly name: string;
  readonly ratioStamp: string;
  readonly otherNumber: string;
  readonly boxLabel: string;
}

/** An arm on a valve at some time, with all valves that it was ever put on: a reading may be entered long after it. */
export interface SatThen extends ValvePlace {
  readonly armId: string;
  readonly everOn: readonly ValvePlace[];
}

/** How a set of passes is read. */
export interface SetUpEvidence extends ValvePlace {
  readonly id: string;
  readonly number: number;
  readonly armId?: string;
  readonly spring: Spring;
  readonly lifter: LifterState;
  readonly lash: LashState;
  readonly lashSetting?: number;
  readonly restsOn: 'not-said' | 'retainer-flat' | 'retainer-edge' | 'valve-tip' | 'spring-seat';
  readonly alignment: 'not-said' | 'parallel' | 'leaning';
  readonly graduation: number;
  readonly perTurn: number;
  readonly travel?: number;
  readonly pushedIn?: number;
  readonly errorLimit: number;
  /** What the valve lift is read with; left out, a dial indicator. */
  readonly tool?: LiftTool;
  readonly lobeSource: keyof typeof LOBE_SOURCES;
  readonly lobeErrorLimit: number;
  /** Where each arm sat by the record when it was set up. */
  readonly satThen?: readonly SatThen[];
}

/** What may be learnt of a set-up after its readings, or put right. */
export type SetUpFact = Exclude<keyof SetUpEvidence, 'id' | 'number' | 'satThen'>;

/** Something that was said of a set-up later: it holds for the readings already there. Only what was said is in it. */
export interface SetUpStatementEvidence {
  readonly id: string;
  readonly line: number;
  readonly setUpId: string;
  readonly says: Partial<Pick<SetUpEvidence, SetUpFact>>;
  /** Facts that are not known after all. */
  readonly notKnown: readonly ('armId' | 'lashSetting' | 'travel' | 'pushedIn')[];
}

export type PassKind =
  | 'valve-lift'
  | 'lobe-lift'
  | 'valve-lift-at'
  | 'stated-valve-lift'
  | 'stated-lobe-lift';

export interface PassEvidence extends EvidenceEntry {
  readonly setUpId: string;
  readonly kind: PassKind;
  /** Number of the pass within its set-up and kind: the order in which it was read on the engine. */
  readonly pass: number;
  readonly value: number;
  readonly zeroReturn?: number;
  readonly atLobeLift?: number;
  /** The small hand was read, and which way the hand ran. */
  readonly counted: boolean;
  readonly readAs: string;
  /** The day it was entered, `2026-03-14`. */
  readonly day?: string;
}

/** A length that was read, or the gauges it lies between. */
export interface Bounds {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
}

export type SheetKindName =
  | 'lobe-lift'
  | 'valve-lift'
  | 'lash'
  | 'preload'
  | 'coil-bind'
  | 'retainer-to-seal'
  | 'piston-to-valve'
  | 'pushrod-to-head'
  | 'slot-to-stud'
  | 'rocker-to-retainer'
  | 'cover';
export type GapName = Exclude<SheetKindName, 'lobe-lift' | 'valve-lift' | 'lash' | 'preload'>;

/** What the least gap of a scan rests on, beside its bounds. */
interface GapOfScan {
  /** What goes behind the gap: ` at about 9° after TDC, at zero lash`. */
  readonly where: string;
  /** `at zero lash`; empty where nobody said. */
  readonly lashSaid: string;
  /** Only the least of what was read: it may be less further on, or between the steps. */
  readonly soFar?: boolean;
  /** What the scan needs before its least may be believed. */
  readonly needs: readonly string[];
  /** Its figures in order of the crank, for another ratio. */
  readonly stations: readonly { readonly crankAngle: number; readonly gap: number }[];
  /** How far one of them may be off. */
  readonly error: number;
  /** Lash that was in the lift. */
  readonly lash: number;
}

export interface SheetEvidence extends EvidenceEntry, ValvePlace {
  readonly kind: SheetKindName;
  readonly reading: Bounds;
  readonly readAs: string;
  readonly tool: string;
  readonly spring: Spring;
  readonly lifter: LifterState;
  readonly arms: 'these' | 'before';
  /** The arm that sat there when it was read. */
  readonly armId?: string;
  /** What the rockers were sold as when it was read, where that is another ratio now. */
  readonly soldAsThen?: number;
  /** Travel of the dial in one turn, where it was said for the sheet. */
  readonly perTurn?: number;
  /** Read with other arms than it is asked for: those on now while others are planned, or one that is off since. */
  readonly otherArms?: 'on-now' | 'off-since';
  /** It is the least of a scan over the crank, and its bounds are those of the scan. */
  readonly scan?: GapOfScan;
}

/** One gap of a scan: its crank angle after top dead centre, negative before. */
export interface ScanPoint {
  readonly crankAngle: number;
  readonly gap: Bounds;
  readonly readAs: string;
}

/** Piston to valve of one valve, read at one crank angle after another. */
export interface ScanEvidence extends EvidenceEntry, ValvePlace {
  readonly points: readonly ScanPoint[];
  readonly readAs: string;
  readonly tool: string;
  readonly spring: Spring;
  readonly lifter: LifterState;
  readonly lash: LashState;
  readonly lashSetting?: number;
  readonly arms: 'these' | 'before';
  /** The arm that sat there when it was read. */
  readonly armId?: string;
  /** What the rockers were sold as when it was read, where that is another ratio now. */
  readonly soldAsThen?: number;
}

export interface LashEvidence extends EvidenceEntry, ValvePlace {
  readonly gap: Bounds;
  readonly readAs: string;
  readonly moment: 'found' | 'set';
  readonly engine: 'not-said' | 'cold' | 'hot';
  readonly nut: 'not-looked' | 'held' | 'moved';
  /** The shim that was in with that gap. */
  readonly shim?: number;
  /** The day it is of, `2026-03-14`; lines are in the order of their days, then as they were entered. */
  readonly day: string;
}

export interface TipMarkEvidence extends EvidenceEntry, ValvePlace {
  readonly width: number;
  readonly side: 'centred' | 'valley' | 'exhaust' | 'sideways';
  readonly off?: number;
  readonly pushrod?: number;
  /** Over what that length is taken, where it was said. */
  readonly pushrodOver?: 'ends' | 'gauge';
  /** Shims under the stand when it was made; zero for none. */
  readonly shims?: number;
  readonly stem?: number;
  readonly readAs: string;
}

export interface PartEvidence extends EvidenceEntry {
  readonly kind: string;
  /** Which part in the hand; the first of a build has no id. */
  readonly partId?: string;
  /** As it was read; of a pitch that was counted the length that the threads go over. */
  readonly size?: number;
  /** The unit that it was entered in; left out, inches. */
  readonly unit?: string;
  readonly tool?: PartTool;
  /** How far off it may be, half-width, where that was typed. */
  readonly typedWithin?: number;
  /** Threads that the length goes over. */
  readonly count?: number;
  readonly word?: string;
  readonly typed: string;
  readonly readAs: string;
}

/** What a part in the hand is called, and which arm of the build it is. */
export interface HandPartEvidence {
  /** The first part of a build has none. */
  readonly id?: string;
  readonly name: string;
  readonly armId?: string;
}

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
  readonly kind: 'note' | 'advice' | 'promise';
  readonly body: string;
  readonly done: boolean;
}

export interface LimitEvidence {
  readonly value: number;
  readonly source: string;
}

/** Two readings at the positive stop: how much the wheel reads too much after top dead centre. */
export interface StopEvidence {
  readonly of: 'stop';
  readonly correction: number;
}

/** Where a lobe peaks, from readings at equal drop or from its events. */
export interface PeakEvidence {
  readonly of: 'peak';
  readonly side: Side;
  readonly fromEvents: boolean;
  /** After top dead centre for an intake, before it for an exhaust. */
  readonly centreline: number;
  /** Earlier than the card; negative later. */
  readonly advance?: number;
  /** Its duration less that of the card, where it was read by its events. */
  readonly durationOver?: number;
  /** It was said whether the pointer was left: its error, if any, was taken off. */
  readonly righted: boolean;
}

/** A computation that was kept with the build; only its figures that others use. */
export interface WorkingEvidence {
  readonly id?: string;
  readonly line: number;
  readonly computation: string;
  readonly pivotToTip?: number;
  readonly netLift?: number;
  readonly timing?: StopEvidence | PeakEvidence;
  /** What is set, ordered or fitted by it. */
  readonly set?: SetEvidence;
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
  readonly springs: {
    readonly installedHeight?: number;
    readonly seatLoad?: number;
    readonly rate?: number;
    readonly solidHeight?: number;
    readonly retainerToSeal?: number;
    /** Two springs on one valve: the figures above are of both together. */
    readonly nest?: Nest;
  };
  readonly rockers: {
    /** The ratio the rockers are sold as. */
    readonly soldAs?: number;
    /** The ratio of the rockers that are to be fitted, where the call is about a change. */
    readonly planned?: number;
    /** The same of the exhausts, where theirs is another. */
    readonly plannedExhaust?: number;
    /** Ratios that are thought of beside it. */
    readonly alsoPlanned?: readonly number[];
    /** What the shop's catalogue has of the family that they are sold under. */
    readonly family?: { readonly name: string; readonly nominalRatio: number };
    readonly pivotToTip?: number;
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
