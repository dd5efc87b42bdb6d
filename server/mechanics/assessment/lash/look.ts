/** What is looked at of a gap that grew, with nothing turned. */
export const LOOK = 'look at nut and stud, the stem’s tip, the roller, both ends of the pushrod and the cup';
