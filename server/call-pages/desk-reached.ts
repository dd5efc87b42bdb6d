/** How somebody with a sheet of paper in the hand gets to the desk and back to the call. */
export interface DeskReached {
  /** As it is set; left out where nobody said it. */
  readonly phone: string | undefined;
  /** Where the service is. */
  readonly origin: string;
}
