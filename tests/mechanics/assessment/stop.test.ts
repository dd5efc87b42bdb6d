import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { sheetPart } from '../../../server/mechanics/assessment/sheet/sheet.ts';
import { actionUnder, stopReasons } from '../../../server/mechanics/assessment/stop.ts';
import { intakes, PLAIN, read } from './plain-build.ts';

const call = (more: Partial<Evidence['call']>): Evidence => ({ ...PLAIN, call: { ...PLAIN.call, ...more } });
const codes = (evidence: Evidence) => stopReasons(evidence, sheetPart(evidence).stop).map(({ code }) => code);

describe('stops: trade practice 1, stop-turning rule, and 6, Safety', () => {
  test('nothing set, nothing raised: no stop', () => {
    expect(codes(PLAIN)).toEqual([]);
  });

  test('a hold and contact are two reasons, each with its way out', () => {
    const evidence = call({
      contact: 'something',
      hold: { reason: 'the pushrod of 3 exhaust is bent', line: 4 },
    });
    expect(codes(evidence)).toEqual(['held', 'contact']);
    expect(stopReasons(evidence, [])[0]?.sentence).toBe('Do not turn it: the pushrod of 3 exhaust is bent.');
  });

  test('contact is lifted by a person, with a reason; a hold by taking it off', () => {
    const lifted = { stopsLifted: [{ stopId: 'stop:contact' }] };
    expect(codes(call({ contact: 'something', ...lifted }))).toEqual([]);
    const held = { hold: { reason: 'wait' }, stopsLifted: [{ stopId: 'stop:held' }] };
    expect(codes(call(held))).toEqual(['held']);
  });

  test('a gap that was read short is lifted once it is answered, and is not to be run while its reading stands', () => {
    const short = read(3, 'exhaust', 'piston-to-valve', 0.06);
    const evidence = { ...PLAIN, sheet: [short] };
    const [stop] = stopReasons(evidence, sheetPart(evidence).stop);
    const lifted: Evidence = {
      ...evidence,
      call: { ...evidence.call, stopsLifted: [{ stopId: stop?.id ?? '' }] },
    };
    expect(codes(lifted)).toEqual(['gap-short']);
    expect(codes({ ...lifted, sheet: [{ ...short, standing: false }] })).toEqual([]);
    const [question] = sheetPart(evidence).questions;
    const answer = { id: 'a', line: 50, code: 'gap-short', question: '', answer: 'short', found: true };
    const answered = { answers: [{ ...answer, questionId: question?.id ?? '' }] };
    const lift = [{ stopId: stop?.id ?? '', entryId: short.id }];
    const free: Evidence = { ...evidence, ...answered, call: { ...evidence.call, stopsLifted: lift } };
    expect(codes({ ...evidence, ...answered })).toEqual(['gap-short']);
    expect(codes(free)).toEqual([]);
    expect(assess(free).notToRun.map(({ sentence }) => sentence)).toEqual([
      'Do not run it: piston to valve on 3 exhaust is short, .060 in ± .002 against .100 in.',
    ]);
    // Read again and short again: it stops once more, though the first reading is the worse one.
    const again = read(3, 'exhaust', 'piston-to-valve', 0.07);
    expect(codes({ ...free, sheet: [short, again] })).toEqual(['gap-short']);
  });

  test('a worn lobe is lifted only once its question is answered', () => {
    const evidence = { ...PLAIN, sheet: intakes({ 2: { lobe: 0.338, lift: 0.541 } }) };
    const part = sheetPart(evidence);
    const question = part.questions.find(({ code }) => code === 'lobe-worn');
    const lift = {
      ...evidence.call,
      stopsLifted: part.stop.map(({ id, entryId = '' }) => ({ stopId: id, entryId })),
    };
    expect(codes({ ...evidence, call: lift })).toEqual(['lobe-worn']);
    const answers = [
      {
        id: 'a',
        line: 50,
        questionId: question?.id ?? '',
        code: 'lobe-worn',
        question: '',
        answer: 'worn',
        found: true,
      },
    ];
    expect(codes({ ...evidence, call: lift, answers })).toEqual([]);
    expect(codes({ ...evidence, answers })).toEqual(['lobe-worn']);
  });

  test('what a stop needs turns nothing and tells nobody to turn, run or fire it', () => {
    const evidence = {
      ...call({ contact: 'something', hold: { reason: 'wait' } }),
      sheet: [...intakes({ 2: { lobe: 0.338, lift: 0.541 } }), read(3, 'exhaust', 'piston-to-valve', 0.06)],
    };
    const stops = stopReasons(evidence, sheetPart(evidence).stop);
    expect(stops).toHaveLength(4);
    for (const action of stops.flatMap((each) => actionUnder([each], []) ?? [])) {
      expect(action.turns).toBe(false);
      expect(action.sentence).not.toMatch(/\b(turn|run|fire|start|crank)\b/i);
      expect(action.reason).toMatch(/^Do not/);
    }
  });
});
