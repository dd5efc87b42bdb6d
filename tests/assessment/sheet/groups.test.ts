import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';

/*
 * Several valves off alike. Odd beyond .008 of the siblings, repeats within .002: common practice, no published source.
 * That one does not condemn sixteen parts for what they have in common: common practice, no source.
 */

import { subjectSaid } from '../../../server/mechanics/assessment/common/said.ts';
import { read } from '../../mechanics/assessment/plain-build.ts';
import { on } from './eight.ts';

const said = (evidence: Evidence): string[] =>
  assess(evidence)
    .headlines.filter(({ step }) => step === 'sheet')
    .map(({ sentence }) => sentence);
const even = (cylinder: number): boolean => cylinder % 2 === 0;

describe('a bank that is off as a whole', () => {
  const low = on((cylinder) => (even(cylinder) ? -0.016 : 0));

  test('one line, one question with the card’s lash, and the reading that tells; no valve is odd', () => {
    const { questions, next } = assess(low);
    expect(said(low)).toHaveLength(1);
    expect(said(low)[0]).toMatch(
      /^Bank 2-4-6-8 reads \.016 in low against bank 1-3-5-7, intakes and exhausts alike.*lash of \.016 in, left in there, would make it/,
    );
    // How the lash was is asked of every sheet that does not say it.
    expect(questions.map(({ code }) => code)).toEqual(['group-off', 'lash-not-said']);
    expect(next).toMatchObject({ action: 'group-off' });
    expect(next?.sentence).toMatch(/read 2 intake once more at zero lash/);
  });

  test('read alike, as was answered: what the bank has in common is looked at, and nothing else is said odd', () => {
    const [question] = assess(low).questions;
    const answers = [
      {
        id: 'a',
        line: 900,
        questionId: question?.id ?? '',
        code: 'group-off',
        question: '',
        answer: 'not-found',
      },
    ];
    const [first = '', ...more] = said({ ...low, answers });
    expect(first).toMatch(/what these have in common: look at the numbers on their arms/);
    expect(more).toEqual([]);
  });

  describe('what the change does with them', () => {
    const answer = (word: string) => {
      const [question] = assess(low).questions;
      return [
        { id: 'a', line: 900, questionId: question?.id ?? '', code: 'group-off', question: '', answer: word },
      ];
    };
    const changed = (answers: Evidence['answers']) =>
      assess({
        ...low,
        answers,
        call: { ...low.call, goal: 'clearances-after-a-change' },
        rockers: { ...low.rockers, soldAs: 1.6, planned: 1.7 },
        sheet: [...low.sheet, read(2, 'intake', 'coil-bind', 0.08), read(1, 'intake', 'coil-bind', 0.08)],
      });
    const ofLow = (answers: Evidence['answers']) => {
      const { quantities, details } = changed(answers);
      return {
        lacks: quantities.find(({ id }) => id === 'sheet:ratio:light:2-intake')?.lacks.join(' ') ?? '',
        notUsed: details.change.find(({ about }) => subjectSaid(about) === '2 intake')?.notUsed ?? '',
      };
    };

    // Lash in a lift is missing from it: nothing may be worked out as if it were the arm's ratio (nothing counts twice).
    test.each(['lash', 'set-up'])('answered %s, nothing is worked out from the low ones', (word) => {
      const { lacks, notUsed } = ofLow(answer(word));
      expect(lacks).toMatch(/another reading/);
      expect(notUsed).toMatch(/is not calculated with yet\. First: another reading/);
    });

    test('answered that all were read alike, or not answered, they are what was read', () => {
      for (const answers of [answer('not-found'), []]) {
        const { lacks, notUsed } = ofLow(answers);
        expect(lacks).not.toMatch(/another reading/);
        expect(notUsed).not.toMatch(/nother reading/);
      }
    });

    test('the other bank, read with the lash out, is worked with', () => {
      const { quantities } = changed(answer('lash'));
      expect(quantities.find(({ id }) => id === 'sheet:ratio:light:1-intake')?.lacks.join()).not.toMatch(
        /another reading/,
      );
    });
  });

  test('one valve that is odd in its own bank is still named, and the partner of its swap is of that bank', () => {
    const evidence = on((cylinder, side) =>
      cylinder === 4 && side === 'intake' ? -0.046 : even(cylinder) ? -0.016 : 0,
    );
    const { sides } = assess(evidence).details.sheet;
    const odd = sides.flatMap((side) => side.odd);
    expect(odd.map(({ cylinder, valve }) => [cylinder, valve])).toEqual([[4, 'intake']]);
    expect(odd[0]?.toSwap?.partner.cylinder).toBe(2);
  });

  test('on hydraulic lifters it is the lifters that are asked, not a lash', () => {
    const evidence = on((cylinder) => (even(cylinder) ? -0.016 : 0), { lifter: 'hydraulic-flat' });
    const question = assess(evidence).questions.find(({ code }) => code === 'group-off');
    expect(question?.ask).toMatch(/Did the lifters sink there/);
    expect(question?.size).toBe('');
  });
});

describe('valves off alike where no bank is known', () => {
  test('three of eight intakes .015 low: one line of the three', () => {
    const evidence = on((cylinder, side) => (side === 'intake' && [2, 4, 6].includes(cylinder) ? -0.015 : 0));
    expect(said(evidence)[0]).toMatch(/^2, 4 and 6 intake read \.015 in low against the other 5: no one/);
    expect(said(evidence).join('\n')).not.toMatch(/is the odd one/);
  });

  test('half of them, with no order of the banks: listed', () => {
    const evidence = on((cylinder) => (even(cylinder) ? -0.016 : 0), { bankOrder: '' });
    expect(said(evidence)[0]).toMatch(
      /^2, 4, 6 and 8, intake and exhaust, read \.016 in low against the other 4/,
    );
  });

  test('two of eight stay two odd valves; lobes that differ as the lifts do are no common cause', () => {
    const two = on((cylinder, side) => (side === 'intake' && cylinder < 3 ? -0.02 : 0));
    expect(said(two).filter((each) => /is the odd one/.test(each))).toHaveLength(2);
    const lobes = on((cylinder, side) => (side === 'intake' && even(cylinder) ? -0.016 : 0));
    const worn = {
      ...lobes,
      sheet: lobes.sheet.map((each) =>
        each.kind === 'lobe-lift' && each.valve === 'intake' && even(each.cylinder)
          ? { ...each, reading: { value: 0.351 * IN } }
          : each,
      ),
    };
    expect(assess(worn).questions.map(({ code }) => code)).not.toContain('group-off');
  });
});
