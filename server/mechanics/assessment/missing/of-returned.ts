import type { Evidence } from '../evidence.ts';
import { gearDetail } from '../gear/gear.ts';
import { MUST, type Need, need } from './need.ts';

type Returned = Pick<Evidence, 'call' | 'notes'>;

/** The call is about a part that came back. */
export const isReturned = ({ call }: Pick<Evidence, 'call'>): boolean => call.goal === 'returned-part';

/**
 * What is lost once a part that came back is cleaned or nobody remembers: kept as a note.
 *
 * Source: common practice, no published source.
 */
export function historyOf(evidence: Returned): Need[] {
  if (!isReturned(evidence)) return [];
  return [
    need(
      'returned-history',
      'its hours and how it was run, who took it off, where it sat, and photographs before it is cleaned',
      'Before it is cleaned: have it photographed as it came, and ask for its hours, who took it off and where it sat; how fast it was turned, on which oil, and how its lash was found and set. Keep that as a note.',
      evidence.notes.some(({ kind }) => kind === 'note'),
      {
        ...MUST,
        askAtBench:
          'Before it is cleaned: photograph it as it came, and say its hours, who took it off and where it sat; how fast it was turned, on which oil, and how its lash was found and set.',
      },
    ),
  ];
}

/**
 * No cause is named on the phone: somebody inspects the part, and the caller hears by a day. Of a part that is named from
 * no sizes what came with it is asked here.
 *
 * Source: common practice, no published source.
 */
export function ofReturned(evidence: Evidence): Need[] {
  if (!isReturned(evidence)) return [];
  const unnamed = gearDetail(evidence).steps.some(({ step }) => step === 'identify');
  return [
    ...(unnamed ? historyOf(evidence) : []),
    need(
      'inspection',
      'who inspects the part, and by which day there is an answer',
      'Say who inspects the part and by which day the caller hears, and keep that as a promise.',
      evidence.notes.some(({ kind }) => kind === 'promise'),
      { ...MUST, askAtBench: 'The desk says who inspects the part, and by which day you hear.' },
    ),
  ];
}
