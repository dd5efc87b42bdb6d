import { describe, expect, it } from 'vitest';
import { questionsFor } from '../../../server/mechanics/questions/questions.ts';
import { MINUTES } from '../../../server/mechanics/questions/tolerances.ts';
import type { Question, QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { lobe, plain, valve } from './plain.ts';
import { type Field, ROWS } from './raised-by.ts';

const LISTS: readonly Field[] = ['valvePasses', 'lobePasses'];
const without = (input: QuestionInput, fields: readonly Field[]): QuestionInput => ({
  ...input,
  ...Object.fromEntries(fields.map((field) => [field, LISTS.includes(field) ? [] : undefined])),
});
const codesOf = (input: QuestionInput) => questionsFor(input).map(({ code }) => code);

/** Said whole: no figure that is none, and nothing rests on what was not entered. */
function expectWhole(input: QuestionInput, questions: readonly Question[]): void {
  const ids = new Set([...input.valvePasses, ...input.lobePasses].map(({ id }) => id));
  for (const { code, ask, size, test, testAtBench = '', restsOn } of questions) {
    expect(MINUTES.has(code), code).toBe(true);
    expect(ask).toMatch(/\?/);
    expect(size).toMatch(/\.$/);
    expect(test).toMatch(/\.$/);
    expect(`${ask} ${size} ${test} ${testAtBench}`).not.toMatch(/NaN|undefined|Infinity/);
    for (const id of restsOn) expect(ids).toContain(id);
  }
  const places = questions.map(
    ({ code, weight }) => (weight === 'strong' ? 0 : 1000) + (MINUTES.get(code) ?? Number.NaN),
  );
  expect(places).toEqual(places.toSorted((a, b) => a - b));
  expect(new Set(questions.map(({ code, ask }) => `${code} ${ask}`)).size).toBe(questions.length);
}

const OPTIONAL = [...new Set(ROWS.flatMap(([, input]) => Object.keys(input)))].filter(
  (name): name is Field =>
    !['spring', 'lifter', 'lash', 'restsOn', 'alignment', 'perTurn', 'graduation', 'lobeSource'].includes(
      name,
    ),
);

describe('what each question rests on', () => {
  it.each(ROWS.map(([code, input, restsOn], at) => [`${code} ${at}`, code, input, restsOn] as const))(
    '%s',
    (_, code, input, restsOn) => {
      expect(codesOf(input)).toContain(code);
      for (const fields of restsOn) {
        expect(codesOf(without(input, fields)), `without ${fields.join(' and ')}`).not.toContain(code);
      }
    },
  );

  it.each(ROWS.map(([code, input], at) => [`${code} ${at}`, input] as const))(
    '%s: with any one thing left out, all sentences are whole',
    (_, input) => {
      expectWhole(input, questionsFor(input));
      for (const field of OPTIONAL) {
        const left = without(input, [field]);
        expectWhole(left, questionsFor(left));
      }
    },
  );

  it('the same question is put once', () => {
    const twice = questionsFor({ ...plain, lobePasses: lobe(0.35, 0.35, 0.35, 0.56, 0.56) });
    expect(twice.filter(({ code }) => code === 'pass-of-other-lift')).toHaveLength(1);
  });

  it('exchanged lifts rest on the passes of both', () => {
    const [asked] = questionsFor({ ...plain, valvePasses: valve(0.35), lobePasses: lobe(0.56) });
    expect(asked?.code).toBe('lifts-exchanged');
    expect(asked?.restsOn.toSorted()).toEqual(['lobe1', 'valve1']);
  });
});
