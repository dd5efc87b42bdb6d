import { expect, it } from 'vitest';
import { type Entry, saysSame } from '../../views/assets/live/entries.ts';

const lash = (...entries: Entry[]): Entry[] => [['moment', 'found'], ...entries];

it.each<[string, Entry[], Entry[], boolean]>([
  [
    'another valve',
    lash(['cylinder', ''], ['valve', '']),
    lash(['cylinder', '6'], ['valve', 'exhaust']),
    false,
  ],
  ['another cylinder', lash(['cylinder', '4']), lash(['cylinder', '6']), false],
  ['a field more, empty', lash(['cylinder', '4']), lash(['cylinder', '4'], ['shim', ' ']), true],
  [
    'another order',
    [
      ['a', '1'],
      ['b', '2'],
    ],
    [
      ['b', '2'],
      ['a', '1'],
    ],
    true,
  ],
  ['the same figure of another field', [['lobe', '.35']], [['lift', '.35']], false],
  ['nothing in either', [['peak', '']], [['peak', '']], true],
])('a form that is made again with %s says the same: as it is', (_, here, next, same) => {
  expect(saysSame(here, next)).toBe(same);
});
