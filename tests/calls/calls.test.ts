import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { tellsToTurn } from '../tools/tells-to-turn.ts';
import { evidenceText, type KnownThen } from '../tools/told/evidence-text.ts';
import {
  AGAIN,
  fileName,
  isWriting,
  keepOnly,
  namesIn,
  readTold,
  usualEvidence,
  writeTold,
  writeUsual,
} from '../tools/told/kept.ts';
import { CALLS, CALLS_ABOUT } from './all.ts';
import type { Call, Expected } from './call.ts';
import type { Entry } from './entry.ts';
import { facesRead } from './faces.ts';
import { knownOfOpened, playKnown } from './known.ts';
import { ORDERS } from './orders.ts';
import { type Played, play } from './play.ts';
import { type Said, saidIn } from './said.ts';

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

/** Every sentence of a call, in one text. */
const textOf = (said: Said): string =>
  [
    ...[...said.headlines, ...said.stop, ...said.notToRun, ...said.judgements, ...said.missing].map(
      ({ sentence }) => sentence,
    ),
    ...said.questions.map(({ ask }) => ask),
    said.next?.sentence ?? '',
  ].join('\n');

function holds(said: Said, expected: Expected): void {
  const words = Object.fromEntries(said.judgements.map(({ id, word }) => [id, word]));
  for (const [id, word] of Object.entries(expected.words ?? {})) {
    expect(Object.keys(words)).toContain(id);
    expect(words[id], id).toBe(word);
  }
  for (const [id, figure] of Object.entries(expected.figures ?? {})) {
    const [, digits = ''] = figure.split('.');
    const value = said.quantities.find((each) => each.id === id)?.value;
    expect(value, `${id} of ${said.quantities.map((each) => each.id).join()}`).toBeCloseTo(
      Number(figure),
      digits.length,
    );
  }
  if (expected.headline !== undefined)
    expect(said.headlines.map(({ sentence }) => sentence).join('\n')).toMatch(expected.headline);
  const codes = said.questions.map(({ code }) => code);
  expect(codes).toEqual(expect.arrayContaining([...(expected.asks ?? [])]));
  for (const code of expected.asksNot ?? []) expect(codes).not.toContain(code);
  const action = said.next?.action.split(':')[0];
  if (expected.next instanceof RegExp) expect(action).toMatch(expected.next);
  else expect(action).toBe(expected.next);
  // What is next rests on one of the open questions: that one is strong, and first.
  const own = said.questions.filter(({ code, answered }) => code === action && answered === undefined);
  if (own.length > 0) expect(own).toContainEqual(expect.objectContaining({ weight: 'strong', isNext: true }));
  expect(said.stop).toHaveLength(expected.stop?.length ?? 0);
  expected.stop?.forEach((reason, at) => {
    expect(said.stop[at]?.sentence).toMatch(reason);
  });
  const text = textOf(said);
  for (const pattern of expected.says ?? []) expect(text).toMatch(pattern);
  for (const pattern of [...(expected.never ?? []), /undefined|NaN|\bnull\b/])
    expect(text).not.toMatch(pattern);
}

test('there are forty calls, and no two begin alike', () => {
  expect(CALLS.length).toBeGreaterThanOrEqual(40);
  expect(new Set(CALLS.map(({ said }) => said)).size).toBe(CALLS.length);
});

/** The same words on every face, and under a stop nobody is told to turn it. */
async function holdsOnFaces(played: Played, { headlines, stop }: Said): Promise<void> {
  const faces = await facesRead(service, person, played);
  const told = faces.flatMap(({ lines }) => lines).join('\n');
  for (const { sentence } of headlines) expect(told).toContain(sentence);
  for (const { name, lines } of faces) {
    const text = lines.join('\n');
    expect(text, name).not.toMatch(/undefined|NaN|\[object/);
    for (const { sentence } of stop) expect(text, name).toContain(sentence);
    if (stop.length > 0) expect(lines.flatMap(tellsToTurn), name).toEqual([]);
  }
}

/** What is known in between and at the end is what the pure tests of the assessment are given. */
function holdsAsWritten(file: string, said: string, times: readonly KnownThen[]): void {
  const text = evidenceText(said, usualEvidence(), times);
  if (isWriting) writeTold(`${file}.json`, text);
  else expect(readTold(`${file}.json`), AGAIN).toBe(text);
}

/** Played as it was told: it says what it must on every face. */
async function asTold(entries: readonly Entry[], { goal, expected }: Call) {
  const { played, times } = await playKnown(service, person, goal, entries);
  const said = await saidIn(played);
  holds(said, expected);
  await holdsOnFaces(played, said);
  return { said, times };
}

describe.each(Object.entries(CALLS_ABOUT))('calls about %s', (about, calls) => {
  const names = calls.map(({ said }) => fileName(said));

  test('each is written down, and no other', async () => {
    if (isWriting) {
      writeUsual(await knownOfOpened(service, person));
      keepOnly(about, names);
    } else {
      expect(usualEvidence(), AGAIN).toEqual(await knownOfOpened(service, person));
      expect(namesIn(about, '.json'), AGAIN).toEqual(names.toSorted());
    }
    expect(new Set(names).size).toBe(names.length);
  });

  test.each(calls)('“$said”, whatever the order of entry, says what it must on every face', async (call) => {
    const { said: words, goal, entries } = call;
    const [first, ...others] = Object.values(ORDERS).map((order) => order(entries));
    if (first === undefined) throw new Error('there is no order to play it in');
    // Each order is a build of its own: they are played side by side.
    const inOtherOrders = others.map(async (order) => saidIn(await play(service, person, goal, order)));
    const [{ said, times }, ...again] = await Promise.all([asTold(first, call), ...inOtherOrders]);
    for (const each of again) expect(each).toEqual(said);
    holdsAsWritten(`${about}/${fileName(words)}`, words, times);
  });
});
