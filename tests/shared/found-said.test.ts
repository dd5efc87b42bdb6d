import { describe, expect, test } from 'vitest';
import { WAS_SLIP } from '../../server/mechanics/assessment/common/answers-of.ts';
import { asked } from '../../server/mechanics/assessment/common/asked.ts';
import { chosenOf } from '../../server/mechanics/assessment/common/chosen.ts';
import type { AnswerEvidence } from '../../server/mechanics/assessment/evidence.ts';
import { foundBy } from '../../server/mechanics/assessment/ratio/answers.ts';
import { foundSaid } from '../../shared/begins-with.ts';
import { answerQuestion } from '../../shared/schemas/commands.ts';

/** What an answer in somebody's own words says was found; one that goes on says neither. */
const SAID: readonly (readonly [string, boolean | undefined])[] = [
  ['found', true],
  ['Found: five turns on the small hand', true],
  ['found, on pass 2', true],
  ['not found', false],
  ['not-found', false],
  ['not found: it came back to zero', false],
  ['found nothing wrong, it is .180', undefined],
  ['found it to be right', undefined],
  ['foundry marks', undefined],
  ['not found out yet', undefined],
  ['looked, found nothing', undefined],
];

const answerIn = (answer: string): AnswerEvidence => ({
  id: 'a',
  line: 1,
  code: 'read-back',
  question: 'Was it read so?',
  answer,
});

describe('found or not', () => {
  test.each(SAID)('“%s” says %s, wherever it is read', (text, found) => {
    expect(foundSaid(text)).toBe(found);
    expect(foundBy(answerIn(text))).toBe(found);
    const question = asked(
      { code: 'read-back', weight: 'strong', ask: 'Was it read so?', test: 'look', restsOn: [] },
      { about: { of: 'build' }, step: 'ratio', answers: [answerIn(text)], choices: WAS_SLIP },
    );
    expect(question.answered?.found).toBe(found);
    expect(chosenOf(question)).toBe(found === undefined ? undefined : found ? 'found' : 'not-found');
    const sent = answerQuestion.safeParse({ question: 'read-back', code: 'read-back', answer: text });
    expect(sent.success).toBe(found !== undefined);
  });

  test('a yes and a no are said so', () => {
    expect(['yes, by a turn', 'no', 'no idea'].map((text) => foundBy(answerIn(text)))).toEqual([
      true,
      false,
      undefined,
    ]);
  });
});
