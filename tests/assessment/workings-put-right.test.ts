import { describe, expect, test } from 'vitest';
import { assess } from '../../server/mechanics/assessment/assess.ts';
import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import type { AnswerEvidence, Evidence } from '../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../server/mechanics/kit/si.ts';
import { type Kept, workingsOf } from '../tools/record/kept-workings.ts';
import { answerTo } from './answer-to.ts';
import { ALL, BASE, HEAT, TURNS } from './put-right-table.ts';

/*
 * Every kept sum with each of its inputs that the build has as well: first both say the same and it is told, then that
 * input is put right in the build. The old figure is then in no sentence, one question asks which holds, and it is next.
 * Which input goes into which sum is the input of each computation; figures are invented.
 */

function said(kept: readonly Kept[], parts: Partial<Evidence>, answers: readonly AnswerEvidence[] = []) {
  const goal = kept.some(([name]) => name === 'centreline')
    ? ('cam-timing' as const)
    : kept.some(([name]) => ['stand-height', 'pushrod-length', 'follower-ratio'].includes(name))
      ? ('geometry' as const)
      : ('adjuster' as const);
  return assess({ ...BASE, call: { ...BASE.call, goal }, ...parts, answers, workings: workingsOf(kept) });
}

/** Every sentence that any face shows. */
const text = ({ headlines, next, judgements, missing, notToRun, stop }: Assessment): string =>
  [...headlines, ...judgements, ...missing, ...notToRun, ...stop, ...(next === undefined ? [] : [next])]
    .map(({ sentence }) => sentence)
    .join('\n');

describe('what a sum was made with is put right in the build', () => {
  test.each(ALL)('$name', ({ kept, before = {}, since, told, asks = 'sum-unlikely' }) => {
    const first = said(kept, before);
    expect(text(first)).toMatch(told);
    expect(first.details.workings.outdated).toEqual([]);
    const then = said(kept, { ...before, ...since });
    expect(text(then)).not.toMatch(told);
    const open = then.questions.filter(({ code, answered }) => code === asks && answered === undefined);
    expect(open).toHaveLength(1);
    expect(then.next?.action).toBe(asks);
    expect(then.next?.turns).toBe(false);
  });

  test.each(ALL.filter(({ asks = 'sum-unlikely' }) => asks === 'sum-unlikely'))(
    '$name: the sum is right all the same, or is worked out again',
    ({ kept, before = {}, since, told }) => {
      const parts = { ...before, ...since };
      const answer = (word: string): AnswerEvidence[] => [answerTo(said(kept, parts), 'sum-unlikely', word)];
      expect(text(said(kept, parts, answer('not-found')))).toMatch(told);
      const wrong = said(kept, parts, answer('found'));
      expect(text(wrong)).not.toMatch(told);
      expect(wrong.next?.sentence).toMatch(/work it out again with the right figure/i);
      expect(wrong.details.workings.outdated.length).toBeGreaterThan(0);
    },
  );
});

test('a lash of the other side of the card is not the one of a valve that the log knows', () => {
  const parts: Partial<Evidence> = {
    card: { ...BASE.card, intake: { lash: 0.028 * IN }, exhaust: { lash: 0.016 * IN } },
    lash: [
      {
        id: 'lash-1',
        line: 50,
        standing: true,
        cylinder: 1,
        valve: 'intake',
        gap: { value: 0.022 * IN },
        readAs: '.022 in',
        moment: 'found',
        engine: 'hot',
        nut: 'held',
        day: '2026-03-01',
      },
    ],
  };
  expect(said([TURNS], parts).next?.action).toBe('sum-unlikely');
  expect(text(said([TURNS], parts))).not.toMatch(/[Tt]ighten/);
});

describe('two sums hot and cold with other metals', () => {
  const iron: Kept = [
    'lash-hot-cold',
    {
      hotLash: '.016 in',
      temperatureRise: '100 F',
      ratio: 1.5,
      materials: { block: 'cast-iron', head: 'cast-iron', pushrod: 'steel', valve: 'steel' },
    },
  ];
  const answered = (all: Assessment, word: string) => answerTo(all, 'heat-sums-differ', word);

  test('neither is told until somebody says which', () => {
    const open = said([HEAT, iron], {});
    expect(text(open)).not.toMatch(/hot is about/);
    expect(open.next?.action).toBe('heat-sums-differ');
    expect(text(said([HEAT, iron], {}, [answered(open, 'not-found')]))).toMatch(/hot is about/);
    const wrong = answered(open, 'found');
    expect(said([HEAT, iron], {}, [wrong]).next?.action).toBe('heat-sums-differ');
    expect(text(said([HEAT, iron, HEAT], {}, [wrong]))).toMatch(/hot is about/);
  });

  test('for two lashes with the same metals nothing is asked', () => {
    const [name, inputs] = HEAT;
    const parts: Partial<Evidence> = { card: { ...BASE.card, exhaust: { lash: 0.018 * IN } } };
    const all = said([HEAT, [name, { ...inputs, hotLash: '.018 in' }]], parts);
    expect(all.questions.map(({ code }) => code)).not.toContain('heat-sums-differ');
  });
});
