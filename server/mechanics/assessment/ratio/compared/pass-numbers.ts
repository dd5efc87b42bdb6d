import type { Evidence, PassEvidence } from '../../evidence.ts';
import type { SetUpRead } from '../read/set-up-read.ts';
import type { Group } from './groups.ts';

const isLobe = ({ kind }: PassEvidence): boolean => kind === 'lobe-lift';
const isTaken = ({ kind }: PassEvidence): boolean => !kind.startsWith('stated-');

/** Kind, place on the lift and number: one reading on the engine, however often it was entered again. */
const keyOf = ({ setUpId, kind, atLobeLift = 0, pass }: PassEvidence): string =>
  [setUpId, kind, atLobeLift, pass].join(' ');

/** At full lift before part of the way up, then by the number of the pass. */
const byReading = (a: PassEvidence, b: PassEvidence): number =>
  Number(a.kind === 'valve-lift-at') - Number(b.kind === 'valve-lift-at') ||
  (a.atLobeLift ?? 0) - (b.atLobeLift ?? 0) ||
  a.pass - b.pass;

/**
 * Which pass of its kind each reading was, over all set-ups of an arm: a pass that was struck out, or is not in a figure,
 * was turned all the same, and a lifter that sinks has sunk in it.
 */
export function passNumbers(
  { passes }: Evidence,
  { own, elsewhere, sameLobe }: Pick<Group, 'own' | 'elsewhere' | 'sameLobe'>,
): (pass: PassEvidence) => number {
  const numbered = (setUps: readonly SetUpRead[], lobe: boolean): [string, number][] => {
    const keys = setUps
      .toSorted((a, b) => a.setUp.number - b.setUp.number)
      .flatMap(({ setUp: { id } }) => passes.filter((pass) => pass.setUpId === id).sort(byReading))
      .filter((pass) => isTaken(pass) && isLobe(pass) === lobe)
      .map(keyOf);
    return [...new Set(keys)].map((key, index) => [key, index + 1]);
  };
  const numbers = new Map([
    ...numbered([...own, ...sameLobe], true),
    ...numbered([...own, ...elsewhere], false),
  ]);
  return (pass) => numbers.get(keyOf(pass)) ?? 1;
}
