import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { ratioRead } from '../../../server/mechanics/assessment/ratio/ratio.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { buildOf, cleanSetUp, passesOf } from './plain.ts';

const assess = assessAsTold('lobe-read-late');

/*
 * The lobe lift was said to be the card's, .348, and is then read at the lifter: .352. Common practice, no published
 * source: what was read goes before what is printed.
 */
const LIFTS = passesOf('valve-lift', [0.5632, 0.563, 0.5634]);
const LOBES = passesOf('lobe-lift', [0.352, 0.352, 0.3522]);
const again = { ...cleanSetUp, id: 'set-up-2', number: 2 };

const detail = (evidence: Evidence, index = 0) => assess(evidence).details.setUps[index];
const lobesGiven = (evidence: Evidence) =>
  ratioRead(evidence).explained[0]?.given?.input.readings.filter(({ of }) => of === 'lobe-lift').length;

describe('a lobe that is read where the card had been said', () => {
  const late = buildOf([], { passes: [...LIFTS, ...LOBES] });

  test('it is the lobe of its set-up, and is weighed', () => {
    expect(detail(buildOf([], { passes: LIFTS }))?.lobe.source).toBe('card');
    expect(detail(late)?.lobe.source).toBe('indicator');
    // .56320 / .35207
    expect(detail(late)?.result?.ratio).toBeCloseTo(1.5997, 3);
    expect(lobesGiven(late)).toBe(3);
  });

  test('another set-up of the valve works with it too', () => {
    const two = buildOf([], {
      setUps: [cleanSetUp, again],
      passes: [...LOBES, ...passesOf('valve-lift', [0.5632, 0.563, 0.5634], { setUpId: again.id })],
    });
    expect(detail(two, 1)?.lobe).toMatchObject({ source: 'indicator', from: { setUpId: cleanSetUp.id } });
    expect(lobesGiven(two)).toBe(3);
  });

  test('struck out, the card is back', () => {
    const struck = LOBES.map((pass) => ({ ...pass, standing: false }));
    expect(detail(buildOf([], { passes: [...LIFTS, ...struck] }))?.lobe.source).toBe('card');
  });

  test('nobody is sent to read it again', () => {
    const asked = assess(late).next?.action ?? '';
    expect(asked).not.toMatch(/^lobe/);
  });
});

describe('which pass a reading was', () => {
  const hydraulic = { ...cleanSetUp, spring: 'running', lifter: 'hydraulic' } as const;
  const numbers = (evidence: Evidence) =>
    ratioRead(evidence).explained[0]?.given?.input.readings.map(({ pass }) => pass);
  const three = passesOf('valve-lift', [0.528, 0.523, 0.517]);

  test('a lifter has sunk in a pass that was struck out: the others keep their numbers', () => {
    const struck = three.map((pass) => ({ ...pass, standing: pass.pass !== 1 }));
    expect(numbers(buildOf([], { setUps: [hydraulic], passes: struck }))).toEqual([2, 3]);
  });

  test('one that was entered again is the same pass', () => {
    const replaced = [
      ...three.map((pass) => ({ ...pass, standing: pass.pass !== 2 })),
      ...passesOf('valve-lift', [0.522], { id: 'again', pass: 2 }),
    ];
    expect(numbers(buildOf([], { setUps: [hydraulic], passes: replaced }))).toEqual([1, 2, 3]);
  });

  test('they go on over set-ups, full lift before part of the way up', () => {
    const next = { ...hydraulic, id: 'set-up-2', number: 2, lash: 'set' } as const;
    const passes = [
      ...three,
      ...passesOf('valve-lift-at', [0.3], { setUpId: next.id, atLobeLift: 0.2 * 0.0254 }),
      ...passesOf('valve-lift', [0.515], { setUpId: next.id }),
    ];
    expect(numbers(buildOf([], { setUps: [hydraulic, next], passes }))).toEqual([1, 2, 3, 4, 5]);
  });
});
