import { describe, expect, test } from 'vitest';
import type { Evidence, PartEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { partPart } from '../../../server/mechanics/assessment/part/part.ts';
import { sized as sizedAs } from './hand-part.ts';
import { PLAIN } from './plain-build.ts';

const sized = (id: string, kind: string, size: number) => sizedAs(kind, size, { id });
const marked = (id: string, kind: string, typed: string): PartEvidence => ({
  id,
  line: 1,
  standing: true,
  kind,
  typed,
  readAs: typed,
});
const on = (part: readonly PartEvidence[], coverBolting?: 'through-centre' | 'perimeter'): Evidence => ({
  ...PLAIN,
  part,
  engine: { ...PLAIN.engine, ...(coverBolting === undefined ? {} : { coverBolting }) },
});

describe('the part in the hand', () => {
  test('a hole of .4355 is a 7/16 stud: trade practice 3, hole bands', () => {
    const part = partPart(on([sized('h', 'hole-across-trunnion', 0.4355)]));
    const fits = part.detail[0]?.holes[0]?.threads.filter(({ fit }) => fit === 'agrees') ?? [];
    expect(fits.length).toBeGreaterThan(0);
    for (const { designation } of fits) expect(designation).toMatch(/^7\/16/);
    expect(part.headlines[0]?.sentence).toMatch(/^The hole suggests 7\/16.*; the thread proves it\.$/);
  });

  test('the widest reading speaks for the cover: 1.600 is not expected to clear bolts through the centre', () => {
    const widths = [sized('a', 'width-across-trunnion', 1.2), sized('b', 'width-across-trunnion', 1.6)];
    expect(partPart(on(widths, 'through-centre')).judgements[0]?.word).toBe('short');
    expect(partPart(on(widths.toReversed(), 'through-centre')).judgements[0]?.word).toBe('short');
    expect(partPart(on(widths)).judgements).toEqual([]);
  });

  test('what does not go together is asked: trade practice 7, rows 23 and 24', () => {
    const codes = (part: readonly PartEvidence[]) => partPart(on(part)).questions.map(({ code }) => code);
    expect(codes([marked('s', 'ratio-stamp', '16')])).toEqual(['stamp-without-dot']);
    expect(codes([marked('s', 'ratio-stamp', '1.6')])).toEqual([]);
    expect(codes([marked('s', 'ratio-stamp', '1.6'), marked('n', 'other-number', '1.6')])).toEqual([
      'same-text-twice',
    ]);
    expect(codes([marked('m', 'other-number', '41'), marked('n', 'other-number', '43')])).toEqual([
      'different-numbers',
    ]);
    expect(
      codes([sized('h', 'hole-across-trunnion', 0.4335), sized('i', 'hole-across-trunnion', 0.4385)]),
    ).toEqual(['two-sizes']);
  });

  test('two stamps without a dot are two questions', () => {
    const ids = partPart(
      on([marked('s', 'ratio-stamp', '16'), marked('t', 'ratio-stamp', '60')]),
    ).questions.map(({ id }) => id);
    expect(new Set(ids).size).toBe(2);
  });
});
