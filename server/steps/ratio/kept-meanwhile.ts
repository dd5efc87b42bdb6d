import { valveName } from '../../call/context.ts';
import type { FormSource } from '../../call/step-form.ts';
import { listReadings, type Reading } from '../../records/readings/readings.ts';
import { listSetUps, type SetUp } from '../../records/set-ups/set-ups.ts';
import type { Fields, FormFault } from '../../web/forms/read-form.ts';

/*
 * Two people may be at one form. What it said that it would save is no longer so once the other side has saved the same
 * meanwhile: then it is asked, and nothing is kept by a number that nobody has seen.
 */

/** The number that the next pass of each kind gets, as the form says it: `lobe-lift 4 valve-lift 1`. */
export const passesSaid = (readings: readonly Reading[]): string =>
  ['lobe-lift', 'valve-lift'].map((kind) => `${kind} ${nextPass(readings, kind)}`).join(' ');

/** The number that the next pass of a kind gets. */
export const nextPass = (readings: readonly Reading[], kind: string): number =>
  Math.max(0, ...readings.filter((reading) => reading.kind === kind).map(({ pass }) => pass)) + 1;

const came = (fields: Fields, field: string, detail: string) => ({
  faults: [{ field, detail }] satisfies FormFault[],
  typed: fields,
});

/** Passes of this kind that came in while one was typed at the desk. */
export async function passesMeanwhile(
  { tx, principal, call, req }: FormSource,
  setUp: SetUp,
  kind: string,
): Promise<ReturnType<typeof came> | undefined> {
  const said = new RegExp(`${kind} (\\d+)`).exec(req.fields['was-passes'] ?? '')?.[1];
  if (said === undefined) return undefined;
  const all = await listReadings(tx, principal, call.buildId);
  const now = nextPass(
    all.filter(({ setUpId }) => setUpId === setUp.id),
    kind,
  );
  if (now === Number(said)) return undefined;
  const name = kind === 'lobe-lift' ? 'lobe lift' : 'valve lift';
  return came(
    req.fields,
    'kind',
    `may be another by now: ${name} of ${valveName(setUp)}, pass ${said}, came in while this was typed. Say what this one is: as ${name} it would be pass ${now}`,
  );
}

/** A set-up of this valve that was started while this form was open at the desk. */
export async function setUpMeanwhile(
  { tx, principal, call, req }: FormSource,
  place: { readonly cylinder: number; readonly valve: string },
): Promise<ReturnType<typeof came> | undefined> {
  const setUps = req.fields['was-setUps'];
  if (setUps === undefined) return undefined;
  const all = await listSetUps(tx, principal, call.buildId);
  const newer = all.find(
    ({ number, ...each }) => number > Number(setUps) && valveName(each) === valveName(place),
  );
  if (newer === undefined) return undefined;
  return came(
    req.fields,
    'cylinder',
    `${newer.cylinder} has a set-up by now: set-up ${newer.number} on ${valveName(newer)} was started while this was open. Leave this one, or press the button once more to start another`,
  );
}
