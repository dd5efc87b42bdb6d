import { describe, expect, test } from 'vitest';
import { linesOf } from '../../tools/call-faces.ts';
import { textOf as read } from '../../tools/page-text.ts';
import { tellsToTurn } from '../../tools/tells-to-turn.ts';
import { settingCall } from './setting-call.ts';

const { freshCall, get, hold, html } = settingCall();

describe('which valve when', () => {
  const V8 = { cylinders: 8, firingOrder: '1-8-4-3-6-5-7-2', bankOrder: '1 3 5 7 / 2 4 6 8' };

  test('the table of the firing order and its numbering stands on the step, the report and in JSON', async () => {
    await freshCall({ engine: V8 });
    for (const at of ['steps/adjuster?of=order', 'report']) {
      const text = read(await html(at));
      // As workshop manuals print it, from memory.
      expect(text, at).toMatch(/cylinder 1, both its valves shut\s+1, 2, 5, 7\s+1, 3, 4, 8/);
      expect(text, at).toMatch(/cylinder 6, both its valves shut\s+3, 4, 6, 8\s+2, 5, 6, 7/);
      expect(text, at).toMatch(/\b8\s+bank 2, 4th from the front/);
      expect(text, at).toContain('when a cylinder’s exhaust begins to open, set its intake');
    }
    const { json } = await get('/lash');
    expect(json.settingOrder).toMatchObject({
      twoPositions: [
        { firing: 1, intakes: [1, 2, 5, 7], exhausts: [1, 3, 4, 8] },
        { firing: 6, intakes: [3, 4, 6, 8], exhausts: [2, 5, 6, 7] },
      ],
    });
  });

  test('without a firing order, or with one that names a cylinder twice, the rule stands and what is missing', async () => {
    await freshCall({ engine: { cylinders: 8 } });
    expect(read(await html('steps/adjuster?of=order'))).toContain(
      'For the table of this engine: the firing order.',
    );
    await freshCall({ engine: { ...V8, firingOrder: '1-8-4-3-6-5-7-7' } });
    expect(read(await html('steps/adjuster?of=order'))).toContain(
      'does not name each of the 8 cylinders once',
    );
    await freshCall({ engine: { cylinders: 5, firingOrder: '1-2-4-5-3' } });
    const five = read(await html('steps/adjuster?of=order'));
    expect(five).toContain('Two positions a turn apart need an even count of cylinders.');
    expect(five).not.toContain('In two positions, a turn');
  });

  test('under a stop nobody is told which valve to set', async () => {
    await freshCall({ engine: V8 });
    await hold('a tight spot');
    for (const at of ['steps/adjuster?of=order', 'report']) {
      const page = await html(at);
      expect(read(page), at).not.toMatch(/both its valves shut|begins to open/);
      expect(linesOf(page).flatMap(tellsToTurn), at).toEqual([]);
    }
    const { json } = await get('/lash');
    expect(json.settingOrder).toMatchObject({
      rows: [],
      said: [expect.stringMatching(/^Not while the stop stands/)],
    });
  });
});
