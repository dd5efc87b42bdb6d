import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { answered, codesOf, inHand, SORREL, seen, sized, without } from './hand-part.ts';

/*
 * What holds a rocker, what its box is for, and its two arms; what does not go together is asked. Common practice, no
 * published source. The catalogue is invented: Betony 150-H is on a shaft, Sorrel 160-B on studs.
 */
const BETONY = [
  sized('hole-across-trunnion', 0.3745),
  sized('hole-across-trunnion', 0.374),
  sized('pivot-to-tip', 1.5),
  sized('pivot-to-cup', 1.003),
  sized('width-across-trunnion', 1.42),
  seen('rings', 'visible'),
];
const toldOf = (evidence: Evidence) =>
  assess(evidence)
    .headlines.map(({ sentence }) => sentence)
    .join(' ');
const ask = (evidence: Evidence, code: string) =>
  assess(evidence).questions.find((each) => each.code === code);

describe('a family of another mount', () => {
  const stud = { engine: { mounting: 'stud' } } as const;

  test('for an engine on studs is asked about before it is named, with the mount to look at', () => {
    const part = inHand(BETONY, stud);
    expect(ask(part, 'family-against-engine')?.ask).toBe(
      'By what was measured it is Betony 150-H, of a shaft mount, and the engine has its rockers on a stud. What does this part sit on?',
    );
    expect(toldOf(part)).not.toMatch(/Betony 150-H stands first/);
    expect(toldOf(answered(part, 'family-against-engine', 'other-engine'))).toMatch(
      /Betony 150-H stands first/,
    );
    expect(codesOf(inHand(BETONY, { engine: { mounting: 'shaft' } }))).not.toContain('family-against-engine');
    expect(codesOf(inHand(BETONY))).not.toContain('family-against-engine');
  });

  test('than the part was seen on stands alone, and is never named against it', () => {
    const part = inHand([...BETONY, seen('mount', 'stud')], stud);
    expect(codesOf(part)).toContain('reading-stands-alone');
    expect(toldOf(part)).not.toMatch(/Betony 150-H stands first/);
    const so = answered(part, 'reading-stands-alone', 'not-found');
    expect(toldOf(so)).not.toMatch(/Betony 150-H stands first/);
    expect(toldOf(inHand(SORREL, stud))).toMatch(/Sorrel 160-B stands first/);
  });
});

describe('a box that names a stud', () => {
  const holes = without('hole-across-trunnion');
  const small = [...holes, sized('hole-across-trunnion', 0.374), sized('hole-across-trunnion', 0.3745)];
  const box = seen('box-label', 'for 7/16 studs, 1.6');

  test('other than the hole was made for is asked about', () => {
    const part = inHand([...small, box]);
    expect(ask(part, 'box-against-stud')?.ask).toBe(
      'The box says “for 7/16 studs, 1.6”, and the hole was made for 3/8. Is it the box of this part?',
    );
    expect(codesOf(inHand([...small, seen('box-label', '1.5 ratio 3/8 stud')]))).not.toContain(
      'box-against-stud',
    );
    expect(codesOf(inHand([...SORREL, seen('box-label', '1.5 ratio 3/8 stud')]))).toContain(
      'box-against-stud',
    );
    expect(codesOf(inHand([...SORREL, box]))).not.toContain('box-against-stud');
  });

  test('other than the stud that came out, and no fraction that is no stud', () => {
    const stud = [sized('stud-diameter', 0.372), sized('stud-pitch', 1 / 24, { typed: '24 tpi' })];
    expect(codesOf(inHand([...stud, box]))).toContain('box-against-stud');
    expect(codesOf(inHand([...stud, seen('box-label', 'set 1/16, 1.6, M8 x 40')]))).toContain(
      'box-against-stud',
    );
    expect(codesOf(inHand([...stud, seen('box-label', 'set 1/16, 1.6')]))).not.toContain('box-against-stud');
  });
});

describe('two arms as long as one another', () => {
  const rest = without('pivot-to-tip').filter(({ kind }) => kind !== 'pivot-to-cup');
  const alike = inHand([...rest, sized('pivot-to-cup', 1.48), sized('pivot-to-tip', 1.48)]);

  test('are asked about, and neither counts meanwhile', () => {
    expect(ask(alike, 'arms-alike')?.ask).toMatch(/both|alike: by them the ratio is about 1/);
    expect(toldOf(alike)).not.toMatch(/ratio is about 1\.00|none of the catalogue’s families/);
    const cup = answered(alike, 'arms-alike', 'first-misread');
    expect(toldOf(cup)).not.toMatch(/none of the catalogue’s families/);
  });

  test('one that was put right of two that were swapped leaves the other to enter', () => {
    const swapped = [...rest, sized('pivot-to-cup', 1.48), sized('pivot-to-tip', 0.926)];
    const said = answered(inHand(swapped), 'sizes-swapped', 'swapped');
    const half = { ...said, part: [...rest, sized('pivot-to-cup', 1.48), sized('pivot-to-tip', 1.48)] };
    expect(codesOf(half)).toContain('arms-alike');
    expect(codesOf(inHand(SORREL))).not.toContain('arms-alike');
  });
});
