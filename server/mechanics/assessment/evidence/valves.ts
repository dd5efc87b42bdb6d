import type { Lack } from '../common/lack.ts';
import type { Bounds, EvidenceEntry, LashState, LifterState, Spring, ValvePlace } from './common.ts';

/* What is read valve by valve: sheet, scans, lash and tip marks. */

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
  /** Only the least of what was read: past the ends of the scan or between its steps it may be less. */
  readonly soFar?: boolean;
  /** The cam was moved after it: it says nothing of the engine as it is. */
  readonly camMoved?: true;
  /** With the cam as it was found; what is said of that. */
  readonly withCam?: string;
  /** What the scan needs before its least may be believed. */
  readonly needs: readonly Lack[];
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
  /** Found wrong by an answer, and taken again since. */
  readonly readAgain?: true;
  readonly tool: string;
  readonly spring: Spring;
  readonly lifter: LifterState;
  /** How the lash was, as was answered of the whole sheet. */
  readonly lash?: Exclude<LashState, 'not-said'>;
  readonly arms: 'these' | 'before';
  /** The arm that sat there when it was read. */
  readonly armId?: string;
  /** The arm is taken from where it was placed later: none was on record there when it was read. */
  readonly putOnLater?: string;
  /** It was read with an arm that nobody named, and that came off for the one on record. */
  readonly comesOff?: true;
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
  readonly putOnLater?: string;
  readonly comesOff?: true;
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
  /** It was entered on a later day than the one it is of. */
  readonly toldLater?: true;
  /** The arm that sat there when it was entered, where one was named. */
  readonly armId?: string;
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
  /** How it came about, where it was said: a mark that has run is not set against fresh ink. */
  readonly found?: 'fresh-ink' | 'after-running';
  /** The spring it was made on, where it was said. */
  readonly spring?: Exclude<Spring, 'not-said'>;
  /** The arm that sat there when it was made. */
  readonly armId?: string;
  readonly readAs: string;
}
