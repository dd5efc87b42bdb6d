import { describe, expect, test } from 'vitest';
import type { ValveRatio } from '../../../server/mechanics/assessment/common/valve-ratio.ts';
import type { Evidence, TipMarkEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { marksPart } from '../../../server/mechanics/assessment/marks/marks.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';
import { ARM, RATIO } from './ratio-of-one.ts';

const mark = (id: string, width: number, more: Partial<TipMarkEvidence> = {}): TipMarkEvidence => ({
  id,
  line: 1,
  standing: true,
  cylinder: 1,
  valve: 'intake',
  width: width * IN,
  side: 'centred',
  readAs: `${width} in wide`,
  ...more,
});
const on = (tipMarks: readonly TipMarkEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  ...more,
  tipMarks,
});

/* A .600 lift on a 1.60 in arm: least sweep .028377, check values 8, confirmed there by a scan. */
describe('tip marks against the least sweep', () => {
  test('the least sweep of a .600 lift on a 1.60 arm is .028377: check values 8', () => {
    const [sweep] = marksPart(on([mark('m', 0.04)], ARM), [RATIO]).quantities;
    expect((sweep?.value ?? 0) / IN).toBeCloseTo(0.028377, 6);
    // The arm is good to .010, about .028377·.010/1.6 = .00018 by hand; no length is told nearer than .0005.
    expect(((sweep?.high ?? 0) - (sweep?.value ?? 0)) / IN).toBeCloseTo(0.0005, 9);
  });

  test('off sideways by less than ink is read to is the middle: .005, half of what two widths may differ by', () => {
    const sideways = (off: number) =>
      marksPart(on([mark('m', 0.04, { side: 'sideways', off: off * IN })], ARM), [RATIO]);
    expect(sideways(0.002).questions.map(({ code }) => code)).toEqual([]);
    expect(sideways(0.002).detail.valves[0]?.first?.todo).toBe(false);
    expect(sideways(0.02).questions.map(({ code }) => code)).toEqual(['mark-sideways']);
  });

  test('a centred mark whose width has no word does not say that the pushrod may stay', () => {
    const bare = marksPart(on([mark('m', 0.04)], { rockers: {} }), []).detail.valves[0]?.first;
    expect(bare?.said).toMatch(/its width has no word yet/);
    const judged = marksPart(on([mark('m', 0.04)], ARM), [RATIO]).detail.valves[0]?.first;
    expect(judged?.said).toBe('The pushrod may stay at this length.');
  });

  test('the lash is taken off once, and not from a lift that carries it: .600 − .020 = .580', () => {
    const card = { ...PLAIN.card, intake: { lobeLift: 0.375 * IN, lash: 0.02 * IN } };
    const from = (lashIn: ValveRatio['lashIn']) =>
      marksPart(on([mark('m', 0.04)], { ...ARM, card }), [{ ...RATIO, lashIn }]).detail.valves[0]?.least
        .from[0];
    expect(from('none')).toMatch(/^net lift \.580 in/);
    expect(from('left-in')).toMatch(/^net lift \.600 in.*lash left in as read/);
  });

  test('.048 wide is ordinary, .049 is looked at again: least + .020, common practice', () => {
    const word = (...widths: readonly number[]) =>
      marksPart(
        on(
          widths.map((width, at) => mark(`m${at}`, width)),
          ARM,
        ),
        [RATIO],
      ).judgements[0]?.word;
    expect([word(0.048), word(0.049, 0.09), word(0.02)]).toEqual(['agrees', 'cannot-tell', 'cannot-tell']);
    // An ink mark holds the contact line’s own width: alone it is not called wide.
    expect(word(0.049)).toBe('cannot-tell');
    const [lone] = marksPart(on([mark('m', 0.049)], ARM), [RATIO]).judgements;
    expect(lone?.lacks).toEqual(['a second mark made in the same way, of that valve or of a neighbour']);
  });

  test('without an arm it says what it lacks', () => {
    const part = marksPart(on([mark('m', 0.05)], { rockers: {} }), []);
    expect(part.judgements[0]?.word).toBeUndefined();
    expect(part.judgements[0]?.lacks).toEqual([
      'pivot to tip of the arm',
      'lobe lift of the intake and a ratio',
    ]);
  });

  test('a mark at the edge stops it while it stands, whatever was inked beside it', () => {
    // .030 wide and .170 off reaches .185; the stem of 11/32 ends at .172.
    const edge = mark('edge', 0.03, {
      side: 'exhaust',
      off: 0.17 * IN,
      stem: 0.344 * IN,
      pushrod: 7.85 * IN,
    });
    const good = mark('good', 0.035, { pushrod: 7.75 * IN, line: 2 });
    const both = marksPart(on([edge, good], ARM), [RATIO]);
    expect(both.stop.map(({ code, entryId }) => [code, entryId])).toEqual([['mark-at-the-edge', 'edge']]);
    expect(both.detail.valves[0]?.judgedId).toBe('good');
    expect(marksPart(on([{ ...edge, standing: false }, good], ARM), [RATIO]).stop).toEqual([]);
  });

  test('which mark was entered first says nothing', () => {
    const marks = [
      mark('a', 0.05, { side: 'valley', off: 0.03 * IN, pushrod: 7.75 * IN }),
      mark('b', 0.045, { side: 'valley', off: 0.01 * IN, pushrod: 7.8 * IN }),
      mark('c', 0.07, { side: 'exhaust', off: 0.04 * IN, pushrod: 7.9 * IN }),
    ];
    const told = marksPart(on(marks, ARM), [RATIO]);
    expect(marksPart(on(marks.toReversed(), ARM), [RATIO])).toEqual(told);
    // From −.030 at 7.750 and −.010 at 7.800 the line meets the middle at 7.825, by hand.
    expect(told.questions.find(({ code }) => code === 'mark-off-centre')?.ask).toMatch(/^Would 7\.825 in/);
  });
});
