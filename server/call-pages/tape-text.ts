import type { TapeNames, TapeText, Tells } from '../call/tell-events.ts';
import type { RecordedEvent } from '../events/build-events.ts';

/** An event in words; one that can't be read is told by its name, and the export has it as it was kept. */
export function tapeText(
  told: Tells,
  event: Pick<RecordedEvent, 'kind' | 'data'>,
  names: TapeNames,
): TapeText {
  const words = Object.hasOwn(told, event.kind) ? told[event.kind]?.(event, names) : undefined;
  return words ?? { kind: 'note', text: event.kind.replaceAll('-', ' ') };
}
