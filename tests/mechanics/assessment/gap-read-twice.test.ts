import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { read } from './plain-build.ts';
import { answered, EIGHT, heard } from './whole-sheet.ts';

/* A gap that was short is read again, once the desk lets it, and comes out as another. Figures invented. */
const CHANGE: Evidence = {
  ...EIGHT,
  call: { ...EIGHT.call, goal: 'clearances-after-a-change' },
  rockers: { soldAs: 1.6 },
};
const gap = (value: number, line: number) =>
  read(1, 'intake', 'piston-to-valve', value, { id: `gap-${line}`, line, tool: 'clay', lash: 'zero' });

const short = { ...CHANGE, sheet: [gap(0.052, 1)] };

/** Another reading is wanted, and the desk lifted the stop for it. */
function lifted(evidence: Evidence): Evidence {
  const said = answered(evidence, 'gap-short', 'read-again', 10);
  const [stop] = heard(said).all.stop;
  if (stop?.entryId === undefined) throw new Error('no stop');
  return {
    ...said,
    call: { ...said.call, stopsLifted: [{ stopId: stop.id, entryId: stop.entryId }] },
  };
}
const again = (value: number): Evidence => {
  const evidence = lifted(short);
  return { ...evidence, sheet: [...evidence.sheet, gap(value, 20)] };
};

describe('a gap that was short and is read again', () => {
  test('is read, while it was not', () => {
    expect(heard(lifted(short)).next).toBe('read-gap-again');
  });

  test('and is not short by that: which of the two was misread is asked, and nobody reads it once more', () => {
    const { next, sentence, all } = heard(again(0.091));
    expect([next, all.next?.turns]).toEqual(['gap-read-twice', false]);
    expect(all.questions.find(({ code }) => code === 'gap-read-twice')?.ask).toBe(
      'Piston to valve on 1 intake was read .052 in, and .091 in when it was read again. Which was misread?',
    );
    expect(sentence).not.toMatch(/read again/);
  });

  test('each answer leads on', () => {
    const next = (answer: string) => heard(answered(again(0.091), 'gap-read-twice', answer, 30)).sentence;
    expect(next('short-one')).toBe('1 intake: strike the short reading out, with the reason.');
    expect(next('again')).toBe('1 intake: strike the later reading out, with the reason.');
    expect(next('neither')).toMatch(/a qualified shop looks before it runs/);
  });

  test('a reading that was there before it was asked for is none that was taken again', () => {
    const both = { ...short, sheet: [...short.sheet, gap(0.091, 2)] };
    expect(heard(lifted(both)).asks).not.toContain('gap-read-twice');
  });

  test('short again it has a stop of its own', () => {
    expect(heard(again(0.055)).stop).toHaveLength(1);
    expect(heard(again(0.055)).asks).not.toContain('gap-read-twice');
  });
});
