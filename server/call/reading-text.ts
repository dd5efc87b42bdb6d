import { asEntered } from '../../shared/quantities/as-entered.ts';
import { READING_KINDS } from '../../shared/schemas/words.ts';
import type { Reading } from '../records/readings/readings.ts';

/** `Valve lift, pass 2`; a number somebody uses has no pass. */
export function readingWords({
  kind,
  pass,
  atLobeLift,
}: Pick<Reading, 'kind' | 'pass' | 'atLobeLift'>): string {
  const at = atLobeLift === undefined ? '' : `, at ${asEntered(atLobeLift.readAs)} of lobe lift`;
  return `${READING_KINDS[kind]}${at}${kind.startsWith('stated-') ? '' : `, pass ${pass}`}`;
}
