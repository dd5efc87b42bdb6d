import { describe, expect, it } from 'vitest';
import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import type { ExplainInput } from '../../../server/mechanics/explain-readings/types.ts';
import { chanceText } from '../../../server/mechanics/explain-readings/words.ts';
import { LIST, valve, WORKED_CASES } from './cases.ts';

function workedInput(row: string): ExplainInput {
  const found = WORKED_CASES.find((worked) => worked.row.startsWith(row));
  if (found === undefined) throw new Error(`no worked case ${row}`);
  return found.input;
}

describe('the summary', () => {
  it('says the ratio first and the name second, word for word as the design note has it', () => {
    const { summary } = explainReadings(workedInput('1.6, .352'));
    expect(summary).toBe(
      '1.655, between 1.602 and 1.666: a 1.65, or a 1.6 running 3 % over; the part number can tell.',
    );
  });

  it('says that more readings will not tell when nothing is left that tells', () => {
    expect(explainReadings(workedInput('.355, V 14.43')).summary).toContain("More readings won't tell.");
  });

  it('calls falling hydraulic passes sinking', () => {
    const result = explainReadings(workedInput('1.65, .330'));
    expect(result.summary).toContain('The lifter is sinking.');
    expect(result.questions.map(({ cause }) => cause)).toContain('sinking');
  });

  it('says that none fits well when something else is likely', () => {
    // .120 of lift gone with the turns counted: no listed mistake reaches it.
    const result = explainReadings({
      nominals: LIST,
      mark: 1.6,
      cardLobeLift: 0.35,
      lash: 'zero',
      readings: [valve(0.44, { counted: true, lashSet: true, aligned: true })],
    });
    expect(result.somethingElse).toBeGreaterThanOrEqual(0.3);
    expect(result.summary).toContain('None fits well.');
  });
});

describe('the questions', () => {
  it('ask with the size and the test', () => {
    const { questions } = explainReadings(workedInput('card .362/.300'));
    const turn = questions.find(({ cause }) => cause === 'turn-too-few');
    expect(turn?.text).toBe('Could one turn have been missed? That makes .580 in.');
    expect(turn?.test).toContain('small hand');
  });

  it('ask every near-equal mistake', () => {
    const { questions } = explainReadings(workedInput('card .362/.300'));
    const causes = questions.map(({ cause }) => cause);
    expect(causes).toEqual(expect.arrayContaining(['turn-too-few', 'wrong-card-row', 'wrong-valve']));
  });

  it('ask each mistake once, and none that every reading has put right', () => {
    const twice = explainReadings(workedInput('1.6, .400')).questions.map(({ cause }) => cause);
    expect(new Set(twice).size).toBe(twice.length);
    const flagged = explainReadings(workedInput('1.6, .352')).questions.map(({ cause }) => cause);
    expect(flagged).not.toContain('plunger-tilted');
  });

  it('ask for the spring, the lifter and the lash where they were not said', () => {
    const { questions } = explainReadings({
      nominals: LIST,
      cardLobeLift: 0.35,
      readings: [{ of: 'valve-lift', value: 0.56, pass: 1, setUp: 0 }],
    });
    expect(questions.filter(({ cause }) => cause === 'state-not-said')).toHaveLength(3);
  });
});

describe('state not said', () => {
  it('is taken as running and hydraulic', () => {
    const base: ExplainInput = { nominals: LIST, cardLobeLift: 0.35, readings: [] };
    const unsaid = explainReadings({
      ...base,
      readings: [{ of: 'valve-lift', value: 0.56, pass: 1, setUp: 0 }],
    });
    const said = explainReadings({
      ...base,
      readings: [valve(0.56, { spring: 'running', lifter: 'hydraulic' })],
    });
    expect(unsaid.ratio).toEqual(said.ratio);
  });
});

describe('an explanation', () => {
  it('says what would have to be true, and which entry it is about', () => {
    const { explanations } = explainReadings(workedInput('.355, V 14.43'));
    expect(explanations[0]?.entry).toEqual({ of: 'reading', index: 0 });
    expect(explanations[0]?.needs).toContain('means .568 in');
  });

  it('names the slip that would explain it', () => {
    // .565 entered as .865: the tenths digit.
    const { explanations } = explainReadings({
      nominals: [1.6],
      cardLobeLift: 0.35,
      lash: 'zero',
      readings: [valve(0.865, { counted: true })],
    });
    const slip = explanations.find(({ causes, entry }) => causes[0] === 'slip' && entry?.of === 'reading');
    expect(slip?.needs).toContain('.565 in was written .865 in');
  });
});

describe('a chance in words', () => {
  it.each([
    [0.999, 'about 95 %'],
    [0.944, 'about 95 %'],
    [0.72, 'about 70 %'],
    [0.01, 'under 5 %'],
  ])('%f is %s', (chance, text) => expect(chanceText(chance)).toBe(text));
});
