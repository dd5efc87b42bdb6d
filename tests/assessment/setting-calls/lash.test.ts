import { expect } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { type Call, codes, lash, STUD, tellEach, V8 } from './call.ts';

const CALLS: readonly Call[] = [
  {
    name: 'set to .006 on a solid roller, with the firing order known',
    base: V8,
    entries: [lash(0.02, '2026-03-01'), lash(0.006, '2026-03-09')],
    check: (said) => {
      expect(codes(said)).toEqual(['lash-unusual']);
      // As workshop manuals print it, from memory.
      expect(said.details.lash.setting.twoPositions?.map(({ intakes }) => intakes.join(' '))).toEqual([
        '1 2 5 7',
        '3 4 6 8',
      ]);
      // An even V8 fires every 90°: so do the places where it is set.
      for (const at of ['setIntakeAt', 'setExhaustAt'] as const)
        expect(
          said.details.lash.setting.rows.map(
            (row, index, all) => (row[at] - (all[index - 1] ?? row)[at] + 720) % 720,
          ),
        ).toEqual([0, 90, 90, 90, 90, 90, 90, 90]);
    },
  },
  {
    // Set at another heat than the card’s is for: its figure is another one.
    name: 'the card’s lash is hot and it was set cold: asked',
    base: {
      ...STUD,
      card: { ...PLAIN.card, lashAt: 'hot', exhaust: { ...PLAIN.card.exhaust, lash: 0.022 * IN } },
    },
    entries: [lash(0.018, '2026-03-01', { engine: 'cold' })],
    check: (said) => {
      expect(said.questions.find(({ code }) => code === 'lash-unusual')?.ask).toBe(
        'Was it meant to be set cold, with the card’s lash for a hot engine?',
      );
    },
  },
  {
    // Found held at another heat than it was set at: that says nothing of what it did.
    name: 'a nut that had moved stands until it was set and found held at one heat',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'adjuster' } },
    entries: [
      lash(0.028, '2026-03-01', { moment: 'found', nut: 'moved' }),
      lash(0.02, '2026-03-02', { nut: 'not-looked' }),
      lash(0.026, '2026-03-03', { moment: 'found', engine: 'cold' }),
    ],
    check: (said) => {
      expect(said.notToRun.map(({ id }) => id)).toContain('not-to-run:noise-nut:log');
      expect(said.details.noise.active).toBe(true);
    },
  },
  {
    name: 'the same once it was set and found held at one heat',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'adjuster' } },
    entries: [
      lash(0.028, '2026-03-01', { moment: 'found', nut: 'moved' }),
      lash(0.02, '2026-03-02', { nut: 'not-looked' }),
      lash(0.021, '2026-03-03', { moment: 'found' }),
    ],
    check: (said) => expect(said.notToRun).toEqual([]),
  },
];

tellEach(CALLS, assessAsTold('setting-calls-lash'));
