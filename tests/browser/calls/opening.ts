import type { Hand } from './hand.ts';

export interface Opening {
  readonly principal: string;
  readonly build: string;
  readonly goal: string;
  readonly engine: string;
  readonly contact?: string;
}

/** The first minute of every call: who, one goal, and whether anything hit. Ends on the step that is next. */
export async function openTheCall(desk: Hand, opening: Opening): Promise<void> {
  await desk.press(/^New call/);
  await desk.fill('Who is calling', opening.principal);
  await desk.select('What they want from this call', opening.goal);
  await desk.fill('A name for the build', opening.build);
  await desk.press(/^Open the call/);
  await desk.choose('The engine', opening.engine);
  await desk.choose('Did anything hit', opening.contact ?? 'Nothing hit, bent, tight or loose');
  await desk.press(/^Save this answer/);
}

/** Makes a link for the builder and answers it as it would be read out or sent. */
export async function makeLink(desk: Hand): Promise<string> {
  await desk.press(/^Share with the builder/);
  await desk.press(/^Make a link/);
  return (await desk.page.locator('.call-link code').textContent()) ?? '';
}
