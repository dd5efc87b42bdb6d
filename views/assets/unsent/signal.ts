type Heard = (up: boolean) => void;

let up = navigator.onLine;
const heard: Heard[] = [];

export const hasSignal = (): boolean => up;

/** What was last seen of the line: a browser says `online` long after nothing goes through any more. */
export function tellSignal(now: boolean): void {
  if (now === up) return;
  up = now;
  for (const each of heard) each(up);
}

export function onSignal(each: Heard): void {
  heard.push(each);
}

addEventListener('offline', () => tellSignal(false));
addEventListener('online', () => tellSignal(true));
