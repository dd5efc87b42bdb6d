/** What the part in the hand says of its fastener and of the room under the cover; the catalogue is elsewhere. */
export interface PartDetail {
  /** One answer for each reading of the hole: two directions are never one of their mean. */
  readonly holes: readonly {
    readonly entryId: string;
    readonly readAs: string;
    readonly threads: readonly { readonly designation: string; readonly fit: 'agrees' | 'cannot-tell' }[];
    readonly ask?: string;
  }[];
  /** Sideways room by the widest reading. */
  readonly cover?: {
    readonly entryId: string;
    readonly readAs: string;
    readonly word: 'clear' | 'close' | 'short';
    readonly reason: string;
    readonly settledBy: string;
    readonly judgementId: string;
  };
}
