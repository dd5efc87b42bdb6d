import type { LinkState } from './bench.ts';

/** What the lines at the top of the builder's page are made from. */
export interface Standing {
  readonly signal: boolean;
  readonly state: LinkState;
  readonly sending: boolean;
  readonly waiting: number;
  readonly refused: number;
  /** Of those refused, how many had arrived in other words. */
  readonly arrived: number;
  /** Typed under another link that was open in this browser. */
  readonly ofOthers: number;
  /** Of those of other links, how many are of this build. */
  readonly ofBuild: number;
  /** Of those that wait, how many went out and may have arrived. */
  readonly tried: number;
}

const one = (count: number, single: string, many: string) => (count === 1 ? single : many);

const unsentSaid = (unsent: number, tried: number): string[] => [
  ...(unsent === 0 ? [] : [`${unsent} not sent.`]),
  ...(tried === 0 ? [] : [`${tried} may have arrived.`]),
];

/** One line that is read in two seconds; empty where there is nothing to say. */
export function headlineOf({ signal, state, sending, waiting, refused, tried, ofOthers }: Standing): string {
  const lost = waiting + refused;
  if (state === 'ended') return ['This link has ended.', ...unsentSaid(lost - tried, tried)].join(' ');
  const said = [
    ...(signal || state === 'closed' ? [] : ['No signal.']),
    ...(waiting === 0 ? [] : [signal && sending ? `Sending ${waiting}.` : `${waiting} not sent yet.`]),
    ...(refused === 0 ? [] : [`${refused} ${one(refused, 'was', 'were')} not taken.`]),
    ...(ofOthers === 0 ? [] : [`${ofOthers} of another link not sent.`]),
  ];
  return said.join(' ');
}

/** What follows from it. */
export function hintOf({ signal, state, waiting, refused, arrived, ofOthers, ofBuild }: Standing): string {
  if (state === 'ended')
    return waiting + refused === 0
      ? 'Nothing more is kept. Ask the desk for a new one.'
      : 'Nothing more is kept. Copy these and tell the desk; ask for a new link.';
  if (arrived > 0)
    return arrived === refused
      ? 'It is on record as it was first sent. Correct it there, then delete it here.'
      : 'Each entry says whether it is on record. Correct what is, change or delete the rest.';
  if (refused > 0) return 'Nothing of these was kept. Change them, or delete them.';
  if (ofBuild > 0) return 'What was typed for this build can be sent under this link, or copied.';
  if (ofOthers > 0) return 'Open that link again to send them, or copy them.';
  if (state === 'closed') return waiting === 0 ? '' : 'Open your link again and they are sent.';
  if (signal) return '';
  return waiting === 0
    ? 'Go on: what you enter waits on this phone.'
    : 'The desk has not seen these. They go out in order when the signal is back.';
}
