import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, PartEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { answered, codesOf, inHand, partOf, SORREL, seen, sized, without } from './hand-part.ts';

/* Common practice, no published source: a mark is kept word for word, no mark proves a ratio, and what does not go together is asked. */

const mark = (kind: string, typed: string): PartEvidence => seen(kind, typed);
const ask = (evidence: Evidence, code: string) =>
  assess(evidence).questions.find((each) => each.code === code);
const toldOf = (evidence: Evidence) =>
  assess(evidence)
    .headlines.map(({ sentence }) => sentence)
    .join(' ');

describe('two ratio stamps on one part', () => {
  test.each([
    ['1.6', '1.5'],
    ['16', '1.5'],
  ])('“%s” and “%s” are asked, and neither is told before', (one, other) => {
    const both = inHand([...SORREL, mark('ratio-stamp', one), mark('ratio-stamp', other)]);
    expect(ask(both, 'stamps-apart')?.ask).toContain(`“${other}” and “${one}”`);
    expect(toldOf(both)).not.toContain('The stamp says');
    const first = answered(both, 'stamps-apart', 'stamp-1');
    expect(toldOf(first)).toMatch(/stamp says 1\.5/);
    expect(toldOf(first)).not.toMatch(/stamp says 1\.6/);
  });

  test('one ratio written twice is one', () => {
    const twice = inHand([...SORREL, mark('ratio-stamp', '1.6'), mark('ratio-stamp', '16')]);
    expect(codesOf(twice)).not.toContain('stamps-apart');
  });
});

test('a box that names another ratio than the stamp may be another part’s', () => {
  const apart = inHand([...SORREL, mark('ratio-stamp', '1.6'), mark('box-label', 'Yarrow 1.5 (set)')]);
  expect(ask(apart, 'box-against-stamp')?.ask).toBe(
    'The part is stamped “1.6”, and its box says “Yarrow 1.5 (set)”. Is it the box of this part?',
  );
  expect(toldOf(answered(apart, 'box-against-stamp', 'found'))).not.toContain('box says');
  expect(toldOf(answered(apart, 'box-against-stamp', 'not-found'))).toContain('box says 1.5');
  const alike = inHand([...SORREL, mark('ratio-stamp', '1.6'), mark('box-label', 'Yarrow 1.6 (set)')]);
  expect(codesOf(alike)).not.toContain('box-against-stamp');
});

test('a part of a stud mount for an engine with shafts is asked', () => {
  const engine = { mounting: 'shaft' } as const;
  const apart = inHand(SORREL, { engine });
  expect(ask(apart, 'mount-against-engine')?.ask).toBe(
    'The part is of a stud mount, and the engine has its rockers on a shaft. Is this arm for that engine?',
  );
  expect(codesOf(inHand(SORREL, { engine: { mounting: 'stud' } }))).not.toContain('mount-against-engine');
  expect(codesOf(inHand(SORREL))).not.toContain('mount-against-engine');
});

test('two parts in the hand that are said to be one arm are asked', () => {
  const arms = [{ id: 'arm', name: 'A', ratioStamp: '1.6', otherNumber: '', boxLabel: '' }];
  const handParts = [
    { id: 'one', name: 'B', armId: 'arm' },
    { id: 'two', name: 'C', armId: 'arm' },
  ];
  expect(ask(inHand([], { arms, handParts }), 'two-parts-one-arm')?.ask).toMatch(
    /said to be the arm “A”\. Which of them is\?/,
  );
  const [one] = handParts;
  const single = one === undefined ? [] : [one];
  expect(codesOf(inHand([], { arms, handParts: single }))).not.toContain('two-parts-one-arm');
});

test('a stud that the hole does not go with is not what the part is put on', () => {
  // .4355 is a hole for 7/16; 3/8-24 over the thread is a little under .375.
  const apart = inHand([...SORREL, sized('stud-diameter', 0.3725), sized('stud-pitch', 0.5, { count: 12 })]);
  const said = answered(apart, 'stud-against-hole', 'not-found');
  expect(toldOf(said)).toMatch(/is not put on that stud; a bushing is a qualified shop’s work/);
});

test('sideways under the cover nothing is asked for that is on record', () => {
  for (const coverBolting of ['through-centre', 'perimeter'] as const) {
    const said = assess(inHand(SORREL, { engine: { coverBolting } }));
    const cover = said.judgements.find(({ id }) => id.includes('cover'));
    expect(cover?.lacks).toEqual([expect.stringMatching(/^Height, with nut/)]);
  }
});

test('a stem that passed and a hole that was read far under it: one of them was read wrong', () => {
  const small = inHand([
    ...without('hole-across-trunnion'),
    sized('hole-across-trunnion', 0.405),
    sized('hole-across-trunnion', 0.4055),
  ]);
  const tried = answered(small, 'hole-between-sizes', 'goes-7-16');
  expect(ask(tried, 'tried-against-hole')?.ask).toMatch(
    /^A 7\/16 went through without play, and the hole reads/,
  );
  expect(codesOf(answered(tried, 'tried-against-hole', 'not-found')).includes('tried-against-hole')).toBe(
    true,
  );
  expect(ask(small, 'tried-against-hole')).toBeUndefined();
});

test('with the thread read it is not told as still to read', () => {
  const implied = (more: readonly PartEvidence[]) =>
    partOf(assess(inHand([...SORREL, ...more]))).ranking?.implied.find(({ what }) => what === 'stud')
      ?.sentence;
  expect(implied([])).toMatch(/its thread is still to read/);
  const read = implied([sized('stud-diameter', 0.4345), sized('stud-pitch', 0.5, { count: 10 })]);
  expect(read).toMatch(/stud or bolt/);
  expect(read).not.toMatch(/still to read/);
});

describe('a part that came back', () => {
  const arms = [{ id: 'arm', name: 'A', ratioStamp: '1.6', otherNumber: 'X', boxLabel: 'Yarrow' }];
  const back = (more: Partial<Evidence> = {}) => {
    const evidence = inHand([], more);
    return assess({
      ...evidence,
      call: { ...evidence.call, goal: 'returned-part', engineState: 'apart', contact: 'none' },
      seats: [{ armId: 'arm', cylinder: 1, valve: 'intake' }],
    });
  };

  test('before it is cleaned: photographs, hours, who and where; its marks on record are not read again', () => {
    const said = back({ arms });
    expect(said.next?.sentence).toMatch(
      /Before it is cleaned.*photographed.*hours, who took it off and where/,
    );
    const notes = [{ id: 'n', line: 99, kind: 'note' as const, body: '40 hours', done: true }];
    const after = back({ arms, notes });
    expect(after.next?.action).not.toBe('returned-history');
    expect(after.missing.map(({ id }) => id)).not.toContain('missing:identify:part-marks');
    const [arm] = arms;
    const bare = arm === undefined ? [] : [{ ...arm, ratioStamp: '', otherNumber: '', boxLabel: '' }];
    expect(back({ arms: bare, notes }).missing.map(({ id }) => id)).toContain('missing:identify:part-marks');
  });
});
