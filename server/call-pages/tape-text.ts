import type { TapeNames, TapeText, Tell } from '../call/tell-events.ts';
import type { RecordedEvent } from '../events/build-events.ts';
import { TOLD } from '../steps/tape-text.ts';

const TELLS: ReadonlyMap<string, Tell> = new Map(Object.entries(TOLD));

/** An event in words; one that can't be read is told by its name, and the export has it as it was kept. */
export function tapeText(event: Pick<RecordedEvent, 'kind' | 'data'>, names: TapeNames): TapeText {
  const told = TELLS.get(event.kind)?.(event, names);
  return told ?? { kind: 'note', text: event.kind.replaceAll('-', ' ') };
}
