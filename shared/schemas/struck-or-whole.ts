import { faultAt, type Refinement } from './two-forms.ts';

/** What a field says where nobody said anything in it. */
const SAYS_NOTHING: readonly unknown[] = [undefined, '', 'not-said'];

/**
 * A correction holds the entry as it should be, or the reason alone, which strikes it out. One that has part of an entry
 * is neither, and nothing is struck by it: `value` is asked for.
 *
 * @example `{ "off": ".013 in", "reason": "read again" }` without a width is refused at `/width`.
 */
export function struckOrWhole(given: object, ctx: Refinement, value: string, other: readonly string[] = []) {
  const says = (name: string, said: unknown) => name !== 'reason' && !SAYS_NOTHING.includes(said);
  const said = Object.entries(given).filter(([name, each]) => says(name, each));
  if (said.length === 0 || said.some(([name]) => name === value || other.includes(name))) return;
  faultAt(
    ctx,
    [value],
    'required',
    `is missing beside ${said.map(([name]) => name).join(', ')}: a correction has the whole entry as it should be; to strike it out, send the reason alone`,
  );
}
