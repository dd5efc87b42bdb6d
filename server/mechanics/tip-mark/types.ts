/** Where the middle of a mark sits on the stem's end. */
type MarkSide = 'centred' | 'valley' | 'exhaust' | 'sideways';
/** Over what a pushrod’s length is taken. */
export type LengthOver = 'ends' | 'gauge';
export type Mounting = 'stud' | 'pedestal' | 'shaft';

/** A mark of one valve; lengths in metres. */
export interface Mark {
  readonly width: number;
  readonly side: MarkSide;
  /** How far its middle is from the stem's, not negative; left out where only its side was told. */
  readonly off?: number | undefined;
  readonly pushrod?: number | undefined;
  /** Shims under the stand when it was made; zero for none. */
  readonly shims?: number | undefined;
  /** Worn in by running; left out for fresh ink, and where nobody said. */
  readonly worn?: true | undefined;
  /** The spring it was made on, where it was said. */
  readonly spring?: 'light' | 'running' | undefined;
  /** What the arm that made it is marked with, where that is on record. */
  readonly arms?: string | undefined;
}

/** What the marks of one valve are set against; lengths in metres. */
export interface MarkContext {
  /** The least sweep this lift can have on this arm; left out while lift or arm is not known. */
  readonly leastSweep?: number | undefined;
  /** The least that it may be, by how well lift and arm are known. */
  readonly leastLow?: number | undefined;
  /** How far above the least a mark may be before it is looked at again. */
  readonly overLeast: number;
  /** A mark up to this wide is counted as ordinary by the trade: one over it and over the least is wide by itself. */
  readonly ordinaryTo?: number | undefined;
  readonly mounting?: Mounting | undefined;
  /** It is of a finger follower: on its own pivot, with no pushrod, stud or stand. */
  readonly follower?: boolean | undefined;
  /** It is of a rocker on an overhead cam: nothing that moves its mark is worked out. */
  readonly overhead?: boolean | undefined;
  /** What is ordered has an adjustment in it: the length that a mark lets stay is the checker’s. */
  readonly adjusted?: boolean | undefined;
  readonly stem?: number | undefined;
  /** Arm and lift that the least is of, and the ratio, where they are known. */
  readonly arm?: number | undefined;
  readonly lift?: number | undefined;
  readonly ratio?: number | undefined;
  /** Over what the lengths of these marks are taken, and whether they were told both ways. */
  readonly over?: LengthOver | undefined;
  readonly bothWays?: boolean | undefined;
  /** Marks on other valves of the same side, to compare with. */
  readonly beside: readonly Mark[];
}

/** What an answer to a question of a mark leads on to. */
export type MarkAsked =
  | 'edge'
  | 'close'
  | 'narrow'
  | 'sideways'
  | 'mounting'
  | 'try'
  | 'compare'
  | 'heights'
  | 'sides'
  | 'contradict'
  | 'pivot';

/** What is asked of a mark, never a verdict; lengths in its words are in inches. */
export interface MarkQuestion {
  readonly asks: MarkAsked;
  readonly code:
    | 'mark-narrower-than-least'
    | 'mark-wide'
    | 'mark-off-centre'
    | 'mark-sideways'
    | 'mark-mounting'
    | 'mark-at-the-edge'
    | 'mark-close-to-edge'
    | 'length-moves-nothing'
    | 'marks-sides-swapped'
    | 'marks-contradict';
  readonly ask: string;
  readonly size?: string;
  readonly test: string;
}
