import { describe, expect, it } from 'vitest';
import { isLarge } from '../../server/work/is-large.ts';

describe('isLarge', () => {
  it.each([
    ['nothing', undefined, false],
    ['a form of one page', Object.fromEntries(Array.from({ length: 60 }, (_, at) => [`f${at}`, '1'])), false],
    ['a list of four hundred', { values: Array.from({ length: 400 }, () => 1) }, true],
    ['lists within lists that come to more', Array.from({ length: 30 }, () => Array(30).fill(1)), true],
    ['a long text is one value', { text: 'x'.repeat(100_000) }, false],
  ])('%s', (_, body, large) => {
    expect(isLarge(body)).toBe(large);
  });

  it('counts no further than it must: a million values take no longer than the few that tell', () => {
    let read = 0;
    const item = {
      get value() {
        read += 1;
        return 1;
      },
    };
    expect(isLarge(Array.from({ length: 390 }, () => item))).toBe(true);
    expect(read).toBeLessThanOrEqual(400);
  });
});
