import type { AskedKind } from './asked-now.ts';

/** What the desk says and how it is done at the bench, for each thing that is read of the part. */
export const HOW_TO: Readonly<Record<AskedKind, { readonly say: string; readonly how: string }>> = {
  'hole-across-trunnion': {
    say: 'Inside jaws in the stud hole: what does the caliper read? Then a quarter turn round: and now?',
    how: 'Inside jaws square in the hole the stud goes through. Read it, turn a quarter turn, enter it again: two readings, both kept. Small holes read a little small.',
  },
  'width-across-trunnion': {
    say: 'Outside jaws over both ends of the trunnion, ends and rings included: how wide is it?',
    how: 'Outside jaws over both ends of the trunnion, rings included, square to it.',
  },
  'roller-diameter': {
    say: 'How thick is the roller at the tip? Turn it a quarter turn and read it again.',
    how: 'Outside jaws in the middle of the roller. Turn the roller a quarter turn and enter it again: a worn flat shows.',
  },
  'body-width': {
    say: 'Across the side faces of the arm, at the pivot and without the trunnion: how wide is the body?',
    how: 'Outside jaws across the side faces of the body at the pivot, the trunnion left out.',
  },
  'pivot-to-tip': {
    say: 'From the middle of the trunnion to the middle of the roller: how far?',
    how: 'Measure edge to edge and calculate to the middles, or lay a rule over both centres. Within .010 is good.',
  },
  'pivot-to-cup': {
    say: 'From the middle of the trunnion to the middle of the pushrod cup: how far?',
    how: 'Put a ball or a pushrod end into the cup and measure to its middle. Within .010 is good.',
  },
  'stud-diameter': {
    say: 'Outside jaws over the thread of the stud or bolt that came out, near its end: what do they read?',
    how: 'Outside jaws over the crests of the thread, where it has not been run on.',
  },
  'stud-pitch': {
    say: 'Which thread gauge lies down in that thread? Without one: count ten threads and measure over them.',
    how: 'Ten threads: from one crest to the tenth after it. Enter the length and the ten; or the gauge’s own figure, such as 20 tpi or 1.25 mm.',
  },
  'stem-diameter': {
    say: 'How thick is the valve stem above the seal?',
    how: 'Outside jaws or a micrometer on the stem, where nothing has worn it.',
  },
  rings: {
    say: 'Do you see retaining rings at the ends of the trunnion, or are the bearings flush with the body?',
    how: 'Wipe the ends of the trunnion and look from the side.',
  },
  tip: {
    say: 'Is there a roller at the valve end, or a sliding shoe?',
    how: 'Look at the end that runs on the valve.',
  },
  mount: {
    say: 'What holds it on the head: a stud, a pedestal, or a shaft?',
    how: 'Look at the head it came off, or at what goes through the trunnion.',
  },
};
