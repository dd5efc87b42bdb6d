import type { Cause, ExplainAnswer } from '../../../explain-readings/types.ts';
import { isDial } from '../../../kit/lift-tools.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { ruledOutBy } from '../asked/asked-as.ts';
import { codeOf, foundBy } from '../read/answers.ts';
import type { SetUpRead } from '../read/set-up-read.ts';
import { ZERO_RETURNS_WITHIN } from '../read/zero.ts';
import type { Group } from './groups.ts';
import type { SetUpKnown } from './known.ts';

/** Questions that reading the entries back answers as well, if something is found. */
const READ_BACK: ReadonlySet<string> = new Set(['valve-swapped', 'gross-lift-as-lobe']);

/** What was said last to a question of each set-up: an answer given again puts the one before it right. */
function lastOf(own: readonly SetUpRead[], code: string): readonly boolean[] {
  return own.flatMap(({ setUp }) => {
    const given = setUp.answers.filter((answer) => codeOf(answer) === code);
    return given.flatMap((answer) => foundBy(answer) ?? []).at(-1) ?? [];
  });
}

/** Looking at the zero: what the passes themselves show goes first, then what was said of it. */
function zeroReturn(own: readonly SetUpRead[]): ExplainAnswer[] {
  const looked = own.flatMap(({ valve }) => valve.used).flatMap(({ zeroReturn: off }) => off ?? []);
  const said = lastOf(own, 'zero-not-returned');
  if (looked.length === 0 && said.length === 0) return [];
  const off = looked.some((each) => Math.abs(each) > ZERO_RETURNS_WITHIN + 1e-12);
  return [{ ask: 'zero-return', found: off || (looked.length === 0 && said.includes(true)) }];
}

/** A question that is still put, and was found to be so: the entry stands as it was. */
const isFound = ({ code, answered }: AssessedQuestion): boolean =>
  READ_BACK.has(code) && answered?.found === true;

function readBack(own: readonly SetUpRead[], questions: readonly AssessedQuestion[]): ExplainAnswer[] {
  const whole = lastOf(own, 'read-back');
  const part = whole.includes(true) || questions.some(isFound);
  if (whole.length === 0 && !part) return [];
  return [{ ask: 'read-back', found: part }];
}

/** What looking at the zero and asking for the entries again have found. */
export const askedOf = ({ own }: Group, known: readonly SetUpKnown[]): ExplainAnswer[] => [
  ...zeroReturn(own),
  ...readBack(
    own,
    known.flatMap(({ questions }) => questions),
  ),
];

/** Mistakes that need a dial. */
const OF_A_DIAL: readonly Cause[] = [
  'turn-too-many',
  'turn-too-few',
  'hand-read-backwards',
  'plunger-tilted',
  'zero-moved',
];

/** Mistakes that nobody can have made, as nothing was read with a dial. */
export function impossibleIn(known: readonly SetUpKnown[]): readonly Cause[] {
  const lifted = known.filter(({ read }) => read.valve.used.length > 0);
  return lifted.length > 0 && lifted.every(({ read }) => !isDial(read.setUp.tool)) ? OF_A_DIAL : [];
}

/** Mistakes that a question of a set-up was about, which was looked at and does not fit. */
export function ruledOutIn(known: readonly SetUpKnown[]): Cause[] {
  const causes = known.flatMap(({ questions }) =>
    questions.filter(({ answered }) => answered?.found === false).flatMap(({ code }) => ruledOutBy(code)),
  );
  const setUps = known.map(({ read }) => read.setUp);
  return causes.filter(
    (cause) =>
      !(cause === 'lash-left-in' && setUps.some(({ lash }) => lash === 'set')) &&
      !(cause === 'plunger-tilted' && setUps.some(({ alignment }) => alignment === 'leaning')),
  );
}
