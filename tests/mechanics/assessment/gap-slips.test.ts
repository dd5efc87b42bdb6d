import { describe, expect, test } from 'vitest';
import type { SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { CHANGE } from './change/change-of-arms.ts';
import { read } from './plain-build.ts';
import { answered, heard } from './whole-sheet.ts';

/* Slips of gaps, invented: intakes at .095 and .098, one at ten times .080. */
const springs = { installedHeight: 1.8 * IN, solidHeight: 1.1 * IN, retainerToSeal: 0.7 * IN };
const gap = (
  cylinder: number,
  kind: SheetEvidence['kind'],
  value: number,
  more: Partial<SheetEvidence> = {},
) => read(cylinder, 'intake', kind, value, { tool: 'feeler', ...more, id: `${kind}-${cylinder}-${value}` });

const withGaps = (sheet: readonly SheetEvidence[]) => ({ ...CHANGE, springs, sheet });
const others = (more: Partial<SheetEvidence> = {}) => [
  gap(2, 'piston-to-valve', 0.095, more),
  gap(3, 'piston-to-valve', 0.098, more),
];

const askedOf = (sheet: readonly SheetEvidence[]) =>
  heard(withGaps(sheet)).all.questions.flatMap(({ code, weight, size }) =>
    code === 'decimal-slip' || code === 'digits-swapped' ? [`${code} ${weight} ${size ?? ''}`] : [],
  );
const wordsOn1 = (sheet: readonly SheetEvidence[]) =>
  heard(withGaps(sheet)).all.judgements.flatMap(({ about, against, word }) =>
    about.of === 'valve' &&
    about.cylinder === 1 &&
    against?.to === 'limit' &&
    against.gap === 'piston-to-valve'
      ? [word ?? 'none']
      : [],
  );

describe('a gap that was typed ten times too large', () => {
  test.each(['these', 'before'] as const)('is asked, and has no word before: arms %s', (arms) => {
    const sheet = [gap(1, 'piston-to-valve', 0.8, { arms }), ...others({ arms })];
    expect(askedOf(sheet)).toEqual([
      'decimal-slip strong Moved one place it makes .080 in; the others read .095 to .098 in.',
    ]);
    expect(new Set(wordsOn1(sheet))).toEqual(new Set(['none']));
    expect(heard(withGaps(sheet)).sentence).toMatch(
      /^1 intake: Read piston to valve, \.800 in, out again digit by digit/,
    );
  });

  test('is asked by itself: by what there is with the valve shut, and by what such gaps are', () => {
    expect(askedOf([gap(1, 'retainer-to-seal', 1.9)])).toEqual([
      'decimal-slip strong Moved one place it makes .190 in; with the valve shut there is .700 in, and at full lift less.',
    ]);
    expect(askedOf([gap(1, 'pushrod-to-head', 0.7)])[0]).toMatch(
      /^decimal-slip strong Moved one place it makes \.070 in/,
    );
    expect(askedOf([gap(1, 'cover', 0.7)])).toEqual([]);
  });

  test('typed ten times too small it is short as it stands, and asked', () => {
    const sheet = [gap(1, 'piston-to-valve', 0.0095), ...others()];
    expect(askedOf(sheet)[0]).toMatch(/^decimal-slip strong Moved one place it makes \.095 in/);
    expect(heard(withGaps(sheet)).stop).toHaveLength(1);
  });

  test('looked at and right, it counts; found wrong, it clears nothing', () => {
    const build = withGaps([gap(1, 'pushrod-to-head', 0.7)]);
    const word = (answer: string) =>
      heard(answered(build, 'decimal-slip', answer)).all.judgements.flatMap(
        ({ about, against, word: said }) =>
          about.of === 'valve' && against?.to === 'limit' && against.gap === 'pushrod-to-head'
            ? [said ?? 'none']
            : [],
      );
    expect(word('not-found')).toContain('clear');
    expect(word('found')).not.toContain('clear');
  });
});

describe('two digits of a gap the other way round', () => {
  test('are asked where the others read so', () => {
    const near = [gap(2, 'piston-to-valve', 0.058), gap(3, 'piston-to-valve', 0.06)];
    expect(askedOf([gap(1, 'piston-to-valve', 0.085), ...near])).toEqual([
      'digits-swapped strong The other way round it is .058 in; the others read .058 to .060 in.',
    ]);
  });

  test('and not where they read as it does', () => {
    const near = [gap(2, 'piston-to-valve', 0.084), gap(3, 'piston-to-valve', 0.088)];
    expect(askedOf([gap(1, 'piston-to-valve', 0.085), ...near])).toEqual([]);
  });
});

describe('a gap that was read twice, far apart', () => {
  test.each(['these', 'before'] as const)('is asked about and said: arms %s', (arms) => {
    const sheet = [gap(1, 'pushrod-to-head', 0.085, { arms }), gap(1, 'pushrod-to-head', 0.112, { arms })];
    const { asks, all } = heard(withGaps(sheet));
    expect(asks).toContain('gap-read-twice');
    expect(all.questions.find(({ code }) => code === 'gap-read-twice')?.ask).toBe(
      'Pushrod to head on 1 intake was read .085 in and .112 in. Which was misread?',
    );
    expect(all.judgements.some(({ sentence }) => /read \.085 in and \.112 in/.test(sentence))).toBe(true);
  });

  test('as near as its tool goes it is one gap, and lash may make the difference', () => {
    const asks = (one: number, other: number, kind: SheetEvidence['kind']) =>
      heard(withGaps([gap(1, kind, one), gap(1, kind, other)])).asks;
    expect(asks(0.085, 0.088, 'pushrod-to-head')).not.toContain('gap-read-twice');
    expect(asks(0.105, 0.118, 'piston-to-valve')).not.toContain('gap-read-twice');
  });

  test('the one that was misread counts no more', () => {
    const build = withGaps([gap(1, 'pushrod-to-head', 0.025), gap(1, 'pushrod-to-head', 0.112)]);
    const said = (answer: string) =>
      heard(answered(build, 'gap-read-twice', answer)).all.judgements.map(({ sentence }) => sentence);
    expect(said('short-one')[0]).toMatch(/\.112 in/);
    expect(said('again')[0]).toMatch(/\.025 in/);
  });
});

test('whoever said in one question that a reading is off has answered whether it is short', () => {
  const near = [gap(2, 'piston-to-valve', 0.095), gap(3, 'piston-to-valve', 0.098)];
  const build = withGaps([gap(1, 'piston-to-valve', 0.0095), ...near]);
  const after = heard(answered(build, 'decimal-slip', 'found')).all;
  expect(after.questions.find(({ code }) => code === 'gap-short')?.answered?.answer).toBe('not-found');
  expect(after.stop[0]?.answered).toBe(true);
});

test('one that is read again, larger and in doubt, takes no word from the one before: that stands', () => {
  const sheet = [gap(1, 'piston-to-valve', 0.123), ...others()];
  const before = wordsOn1(sheet);
  expect(before).toContain('clear');
  const again = [...sheet, gap(1, 'piston-to-valve', 0.8)];
  expect(askedOf(again)).toHaveLength(1);
  expect(wordsOn1(again)).toEqual(before);
});

test('another valve that is read again, larger, raises no slip of this one', () => {
  const slipOf1 = (sheet: readonly SheetEvidence[]) =>
    askedOf(sheet).filter((each) => each.includes('.159 in'));
  const first = gap(1, 'piston-to-valve', 0.195);
  const [lesser, larger] = [gap(2, 'piston-to-valve', 0.14), gap(2, 'piston-to-valve', 0.158)];
  expect(slipOf1([first, larger])).toHaveLength(1);
  expect(slipOf1([first, lesser])).toEqual([]);
  expect(slipOf1([first, lesser, gap(2, 'piston-to-valve', 0.177)])).toEqual([]);
});
