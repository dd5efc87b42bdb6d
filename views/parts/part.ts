import type { ComponentName, Components } from './components.ts';

/** One state of a part, as it is shown at /reference/parts and rendered by the tests. */
interface Example<Data> {
  readonly title: string;
  readonly data: Data;
}

/** A part of the pages: one template, one purpose, and every state it can be in. */
export interface Part<Name extends ComponentName> {
  readonly name: string;
  readonly title: string;
  readonly purpose: string;
  /** The name to include it by, from the views folder. */
  readonly template: Name;
  readonly examples: readonly Example<Components[Name]>[];
}

/** A part whose template is known only where it runs. */
export type AnyPart = { [Name in ComponentName]: Part<Name> }[ComponentName];

/** Text that would do harm or break the line if it were not escaped; it belongs in every part's examples. */
export const HOSTILE = `</p><script>alert("1")</script><img src=x onerror='alert(2)'>&amp; "five" <b>`;

/** A sentence longer than anyone should write, with a word that has no place to break. */
export const LONG =
  'Second arm from the front on the left bank as the caller stands at the water pump, taken off and put back twice before the call, marked with a felt pen as INTAKE5INTAKE5INTAKE5INTAKE5INTAKE5INTAKE5';
