import { expect, test } from 'vitest';
import { sourceFiles } from '../tools/source-files.ts';
import { neverSaid, toldTexts } from '../tools/told-texts.ts';

/** The list of words is seeds/words.json: ours, the trade’s, and those that are never said. */
test('no text of program, templates and tables has a word that is never said', async () => {
  const files = [
    ...(await sourceFiles('server', ['.ts'])),
    ...(await sourceFiles('shared', ['.ts'])),
    ...(await sourceFiles('views', ['.ts', '.eta'])),
    ...(await sourceFiles('seeds', ['.json'])),
  ];
  const texts = toldTexts(files);
  expect(texts.length).toBeGreaterThan(5000);
  const found = texts.flatMap(({ path, text }) => neverSaid(text).map((word) => `${path}: ${word}`));
  expect(found).toEqual([]);
});

test('the list finds each of its own words, and leaves plain English alone', () => {
  for (const said of [
    'It is reckoned from .000 in',
    'Zero is nought',
    'Read it anew',
    'Taken for granted',
    'What stands here',
    'It is done',
    'Leave it as it is.',
    'Don’t fit them.',
    'It is safe to run',
    'shifted by about .000 in',
    'Lift the hold',
    'Level with its siblings',
    'Spoken in inches',
    'Whom to call: the desk',
    'The arms do not carry one ratio stamp',
    'Of a lift that is off by as much: the card',
    'No chances are told yet',
    'It is what the call is about',
  ])
    expect(neverSaid(said), said).toHaveLength(1);
  expect(neverSaid('Read it again, as it was read before; the limit is what the maker asks for.')).toEqual(
    [],
  );
});
