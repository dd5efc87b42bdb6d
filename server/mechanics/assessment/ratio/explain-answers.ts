import type { ExplainAnswer } from '../../explain-readings/types.ts';
import { codeOf, foundBy } from './answers.ts';
import type { Group } from './groups.ts';
import { ZERO_RETURNS_WITHIN } from './passes.ts';
import type { SetUpRead } from './set-up-read.ts';

/** Questions that are answered by reading the entries back, if something is found. */
const READ_BACK: ReadonlySet<string> = new Set(['read-back', 'valve-swapped', 'gross-lift-as-lobe']);

function foundOf(own: readonly SetUpRead[], code: string): readonly boolean[] {
  return own.flatMap(({ setUp }) =>
    setUp.answers.filter((answer) => codeOf(answer) === code).flatMap((answer) => foundBy(answer) ?? []),
  );
}

/** Looking at the zero: what the passes themselves show goes first, then what was said of it. */
function zeroReturn(own: readonly SetUpRead[]): ExplainAnswer[] {
  const looked = own.flatMap(({ valve }) => valve.used).flatMap(({ zeroReturn: off }) => off ?? []);
  const said = foundOf(own, 'zero-not-returned');
  if (looked.length === 0 && said.length === 0) return [];
  const off = looked.some((each) => Math.abs(each) > ZERO_RETURNS_WITHIN + 1e-12);
  return [{ ask: 'zero-return', found: off || (looked.length === 0 && said.includes(true)) }];
}

function readBack(own: readonly SetUpRead[]): ExplainAnswer[] {
  const whole = foundOf(own, 'read-back');
  const part = [...READ_BACK].flatMap((code) => foundOf(own, code)).includes(true);
  if (whole.length === 0 && !part) return [];
  return [{ ask: 'read-back', found: part }];
}

/** What looking at the zero and asking for the entries again have found. */
export const askedOf = ({ own }: Group): ExplainAnswer[] => [...zeroReturn(own), ...readBack(own)];
