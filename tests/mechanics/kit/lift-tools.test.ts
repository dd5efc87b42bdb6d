import { describe, expect, test } from 'vitest';
import tools from '../../../seeds/part-tools.json' with { type: 'json' };
import {
  isDial,
  isLobeTool,
  liftLimitsSaid,
  liftWithin,
  lobeLimitsSaid,
  lobeWithin,
} from '../../../server/mechanics/kit/lift-tools.ts';
import { speaking } from '../../../shared/quantities/spoken-units.ts';
import { keysOf, LIFT_TOOLS, LOBE_SOURCES } from '../../../shared/schemas/words.ts';
import { expectNear } from '../helpers/near.ts';

/** The inch is exactly 25.4 mm (the international yard, 1959). */
const INCH = 0.0254;

describe('how far off a lift may be, by its tool', () => {
  test('the table’s inches are told in metres', () => {
    for (const tool of keysOf(LIFT_TOOLS))
      expectNear(liftWithin(tool), tools.lifts.valve[tool].within * INCH);
    for (const source of keysOf(LOBE_SOURCES)) {
      expectNear(lobeWithin(source), tools.lifts.lobe[source].within * INCH);
    }
    // A rule is read to a sixty-fourth of an inch (common practice, no source).
    expect(Math.abs(liftWithin('rule') - INCH / 64)).toBeLessThan(0.0005 * INCH);
  });

  test('each tool is said with its limit, the zero before the point left out, words begun small', () => {
    const said = liftLimitsSaid().split(', ');
    expect(said).toContain('dial indicator .0025 in');
    expect(said).toContain('rule .016 in');
    expect(lobeLimitsSaid()).toContain('dial indicator at the lifter .');
    for (const sentence of [liftLimitsSaid(), lobeLimitsSaid()]) {
      expect(sentence).not.toMatch(/\p{Lu}|(?<!\d)0\./u);
      expect(sentence.match(/ in(?:,|$)/g)?.length).toBeGreaterThanOrEqual(5);
    }
    expect(lobeLimitsSaid().match(/ in(?:,|$)/g)).toHaveLength(keysOf(LOBE_SOURCES).length);
  });

  test('a call in millimetres has millimetres: .016 in is .41 mm', () => {
    expect(speaking('metric', liftLimitsSaid)).toMatch(/rule 0?\.41 mm/);
  });
});

describe('what is read with a dial', () => {
  test('an indicator, and where nothing is said', () => {
    expect(isDial(undefined)).toBe(true);
    expect(keysOf(LIFT_TOOLS).filter(isDial)).toEqual(['indicator']);
  });

  test('at the lobe a tool is neither dial nor card, and the loose cam is no lifter', () => {
    expect(keysOf(LOBE_SOURCES).filter(isLobeTool).toSorted()).toEqual([
      'depth-bar',
      'feeler',
      'guess',
      'rule',
    ]);
  });
});
