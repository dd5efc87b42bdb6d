import { inches, placeOf } from '../common/said.ts';
import type { Group } from '../ratio/compared/groups.ts';
import { isSaid, type LackCode, type RatioLack, turnsNothing } from '../ratio/read/lack.ts';
import { lackSaid, passesSaid } from '../ratio/read/lack-said.ts';
import { type SetUpNow, setUpSubject } from '../ratio/read/set-ups.ts';
import { MUST, MUST_TURN, type Need, need } from './need.ts';

/** Readings that the inference has a name for go by it, so that the way to them is the same. */
function codeOf(lack: RatioLack): string {
  switch (lack.code) {
    case 'light-spring-first':
    case 'may-have-sunk':
      return 'light-spring-solid-lifter';
    case 'lash-in-known':
    case 'lash-in-unknown':
      return 'lash-to-zero';
    case 'plunger-leans':
      return 'align-plunger';
    case 'rests-elsewhere':
      return 'rest-on-retainer';
    case 'read-back-wrong':
      return 'read-back';
    case 'enter-again':
      return `enter-again-${passesSaid(lack).replaceAll(/[^a-z0-9]+/g, '-')}`;
    case 'answer':
    case 'card-lobe-wrong':
    case 'card-wrong':
    case 'sold-as-other':
      return `${lack.code}-${lack.of}`;
    case 'no-pass':
    case 'none-back-at-zero':
    case 'passes-apart':
      return `${lack.code}-${lack.lift}`;
    default:
      return ofLift(lack) ?? lack.code;
  }
}

/** Of the valve lift alone: the lobe is read in another place. */
function ofLift(lack: RatioLack): string | undefined {
  if (lack.code === 'guessed') return lack.lift === 'valve' ? 'lift-with-a-tool' : 'guessed-lobe';
  if (lack.code !== 'one-more-pass') return undefined;
  return lack.lift === 'valve' ? 'one-more-pass' : 'one-more-pass-lobe';
}

/** Readings that are taken; the rest is wanted. */
const TAKEN: ReadonlySet<LackCode> = new Set([
  'light-spring-first',
  'may-have-sunk',
  'lash-in-known',
  'lash-in-unknown',
  'plunger-leans',
  'rests-elsewhere',
  'guessed',
  'one-more-pass',
  'passes-scatter',
  'same-as',
]);

/** A lack as something to do. */
function askFor(at: string, lack: RatioLack): string {
  if (isSaid(lack)) return `Ask for ${at} ${lackSaid(lack)}.`;
  if (lack.code === 'enter-again')
    return `Enter ${passesSaid(lack)} of ${at} again, or strike ${lack.passes.length > 1 ? 'them' : 'it'} out with the reason: ${lack.why}.`;
  if (lack.code === 'springs-against')
    return `${at}: read both springs again, same lifter, lash and zero: the running one reads ${inches(lack.by)} over the light one, and a spring adds no lift.`;
  if (lack.code === 'read-back-wrong')
    return `${at}: put right the entry that was wrong, then read the entries back once more.`;
  if (lack.code === 'sinking')
    return `${at}: put a solid lifter in, or lock this one solid at the same seat height, and take the passes again: these sink.`;
  if (lack.code === 'lash-in-known' || lack.code === 'lash-in-unknown')
    return `${at}: take ${lackSaid(lack)}. It is a new set-up: say there that the lash is at zero.`;
  return TAKEN.has(lack.code) ? `${at}: take ${lackSaid(lack)}.` : `Wanted for ${at}: ${lackSaid(lack)}.`;
}

/** What a set-up does not say, and the question about it that settles it. */
const SETTLED_BY: Readonly<Partial<Record<LackCode, string>>> = {
  'which-spring': 'spring-not-said',
  'which-lifter': 'lifter-not-said',
  'lash-not-said': 'lash-not-said',
};

/** By which way on the page it is given: the answer to a question about the set-up, or entries that are corrected. */
function wayOf(lack: RatioLack, setUp: SetUpNow | undefined): Pick<Need, 'about' | 'settles' | 'corrects'> {
  if (lack.code === 'enter-again') return { corrects: lack.entryIds };
  const settles = SETTLED_BY[lack.code];
  return settles === undefined || setUp === undefined ? {} : { settles, about: setUpSubject(setUp) };
}

/**
 * What a set-up lacks, as something that is asked for. `setUp`: the one that is judged; `begun`: it is what the
 * headline names first.
 */
export function ofLack(lack: RatioLack, group: Group, setUp: SetUpNow | undefined, begun: boolean): Need {
  const at = placeOf(group);
  const said = lackSaid(lack);
  return need(`${codeOf(lack)}:${group.key}`, `${at}: ${said}`, askFor(at, lack), false, {
    ...(turnsNothing(lack) ? MUST : MUST_TURN),
    begun,
    ...wayOf(lack, setUp),
    ...(isSaid(lack) ? { askAtBench: `Say for ${at} ${said}.` } : {}),
  });
}
