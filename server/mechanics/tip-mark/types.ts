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
}

/** What the marks of one valve are set against; lengths in metres. */
export interface MarkContext {
  /** The least sweep this lift can have on this arm; left out while lift or arm is not known. */
  readonly leastSweep?: number | undefined;
  /** How far above the least a mark may be before it is looked at again. */
  readonly overLeast: number;
  readonly mounting?: Mounting | undefined;
  /** It is of a finger follower: on its own pivot, with no pushrod, stud or stand. */
  readonly follower?: boolean | undefined;
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

/** What is asked of a mark, never a verdict; lengths in its words are in inches. */
export interface MarkQuestion {
  readonly code:
    | 'mark-narrower-than-least'
    | 'mark-wide'
    | 'mark-off-centre'
    | 'mark-sideways'
    | 'mark-at-the-edge'
    | 'length-moves-nothing'
    | 'marks-sides-swapped'
    | 'marks-contradict';
  readonly ask: string;
  readonly size?: string;
  readonly test: string;
}
