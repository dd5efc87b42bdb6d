const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel('benchcall-unsent') : undefined;

/** A stop was said or heard of on this page: it is shown before all else. */
export const STOP_SAID = 'stop-said';

/** Tells the other pages of this browser that the list of what waits has changed. */
export function tellOthers(): void {
  channel?.postMessage('changed');
}

export function onOthers(heard: () => void): void {
  channel?.addEventListener('message', heard);
}
