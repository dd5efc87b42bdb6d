import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { answered, armOf, EIGHT, heard, setUpOn, sixteen, VERIFY } from './whole-sheet.ts';

const ARM = armOf('A1');
/** A call about one arm on 1 intake, stamped 1.6, lobes .350 on the card. */
const _BUILD: Evidence = {
  ...VERIFY,
  card: { assumedRatio: 1.6, intake: { lobeLift: 0.35 * IN, valveLift: 0.56 * IN }, exhaust: {} },
  arms: [ARM],
  seats: [{ cylinder: 1, valve: 'intake', armId: ARM.id }],
};
const _read = (lifts: readonly number[], more: Parameters<typeof setUpOn>[3] = {}) =>
  setUpOn(1, ARM.id, lifts, more);

describe('the sheet', () => {
  test('the same valve read otherwise on sheet and set-up: answered, nobody waits for the answer', () => {
    const sheet = sixteen(1.6, () => ({}), { lash: 'zero' });
    const both: Evidence = { ...EIGHT, arms: [ARM], sheet, ...setUpOn(2, undefined, [0.58, 0.58, 0.58]) };
    const said = heard(answered(both, 'read-otherwise', 'again'));
    const all = [...said.headlines, ...said.all.judgements.flatMap(({ lacks }) => lacks)].join(' ');
    expect(all).not.toContain('the answer to “The valve lift of 2 intake');
    expect(all).toContain('was answered “Another reading is wanted”');
  });

  test('columns that may be copied hold back that no valve stands out', () => {
    const copied = sixteen(1.6, (_, place) => ({ lift: place.endsWith('intake') ? 0.56 : 0.576 }), {
      lash: 'zero',
    });
    const said = heard({ ...EIGHT, sheet: copied });
    expect(said.asks).toContain('copied-reading');
    expect(said.headlines.join(' ')).not.toContain('stands out');
  });

  test('a hydraulic lifter: a valve that reads high may have the one that sank least', () => {
    const sheet = sixteen(1.55, (row, place) => (place === '1 intake' ? { lift: row.lift + 0.012 } : {}), {
      lifter: 'hydraulic',
    });
    const said = heard({ ...EIGHT, engine: { ...EIGHT.engine, lifter: 'hydraulic-roller' }, sheet });
    const high = said.headlines.find((each) => each.startsWith('1 intake is'));
    expect(high).toContain('where theirs sink more');
    expect(high).not.toContain('the rocker or its position');
  });

  test('a lobe .007 under the others with a lift like theirs is read again', () => {
    const at = (lobe: number) =>
      heard({
        ...EIGHT,
        sheet: sixteen(1.6, (_, place) => (place === '5 exhaust' ? { lobe } : {}), { lash: 'zero' }),
      });
    const said = at(0.338);
    expect(said.headlines.join(' ')).toContain(
      'The lobe of 5 exhaust reads .007 in low, and its valve lifts like the others: the lobe may be misread.',
    );
    expect(said.headlines.join(' ')).not.toContain('No exhaust stands out');
    expect(said.sentence).toContain('Read the lobe of 5 exhaust at the lifter once more');
    // .004 on a 1.6 is .0064: under what makes a valve odd.
    expect(at(0.341).headlines.join(' ')).not.toContain('may be misread');
  });
});

test('the swap goes with the neighbour whose arm is on record, and asks for no arm twice', () => {
  const [five, three] = [armOf('A5'), armOf('A3')];
  const short = sixteen(1.6, (row, place) => (place === '5 intake' ? { lift: row.lift - 0.03 } : {}), {
    lash: 'zero',
  });
  const again = short.filter(({ cylinder, valve }) => cylinder === 5 && valve === 'intake');
  const sheet = [
    ...short,
    ...again.map((each) => ({ ...each, id: `${each.id}-again`, line: each.line + 900 })),
  ];
  const engine = { ...EIGHT.engine, bankOrder: '' };
  const at = (seats: Evidence['seats']) =>
    heard({ ...EIGHT, engine, arms: [five, three], seats, sheet }).sentence;
  const seat = (cylinder: number, armId: string) => ({ cylinder, valve: 'intake' as const, armId });
  expect(at([seat(5, five.id), seat(3, three.id)])).toMatch(/^Swap A5 \(5 intake\) with A3 \(3 intake/);
  expect(at([seat(5, five.id)])).toContain('Put the arm of 4 intake on record');
});

test('all off, with the lash said to be out: the lash is looked at no more', () => {
  const all = (lash: 'zero' | undefined) =>
    heard({ ...EIGHT, sheet: sixteen(1.45, () => ({}), lash === undefined ? {} : { lash }) }).headlines.join(
      ' ',
    );
  expect(all('zero')).toContain('First: dial and unit; then the set.');
});
