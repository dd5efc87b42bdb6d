import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { geared } from './geared.ts';
import { PLAIN } from './plain-build.ts';

/* No cause is named on the phone: common practice, no published source. */

const note = (line: number, kind: 'note' | 'advice' | 'promise', done = false) => ({
  id: `n${line}`,
  line,
  kind,
  body: 'as said',
  done,
});
const back = (gear: 'bucket' | 'finger-follower', notes: Evidence['notes']) => {
  const evidence = geared(gear, { notes, card: { intake: {}, exhaust: {} }, rockers: {} });
  return assess({
    ...evidence,
    call: { ...evidence.call, goal: 'returned-part', engineState: 'apart', contact: 'none' },
  });
};

describe('a part that came back', () => {
  test('of a bucket engine: hours, marks and photographs first, then who inspects it and by when', () => {
    expect(back('bucket', []).next?.action).toBe('returned-history');
    const asked = back('bucket', [note(50, 'note')]);
    expect(asked.next?.sentence).toMatch(/who inspects the part and by which day the caller hears/);
    const promised = back('bucket', [note(50, 'note'), note(51, 'promise', true)]);
    expect(promised.next?.action).toBe('said');
    expect(
      back('bucket', [note(50, 'note'), note(51, 'promise', true), note(52, 'advice')]).next?.action,
    ).toBe('close');
  });

  test.each(['bucket', 'finger-follower'] as const)('%s: no cause is named before inspection', (gear) => {
    expect(back(gear, []).headlines.map(({ sentence }) => sentence)).toContain(
      'No cause is named before the part was inspected.',
    );
  });
});

/* The arm is off: what is asked of it is what is forgotten first. Common practice, no published source. */
test('an arm that came back is asked for no valve that it sits on, but for its hours and how it was run', () => {
  const arm = (notes: Evidence['notes']) =>
    assess({
      ...PLAIN,
      notes,
      arms: [{ id: 'arm', name: 'returned', ratioStamp: '1.6', otherNumber: '7', boxLabel: 'DEMO 1.6' }],
      call: { ...PLAIN.call, goal: 'returned-part', engineState: 'has-run', contact: 'none' },
    });
  const first = arm([]);
  expect(first.missing.map(({ id }) => id).join(' ')).not.toMatch(/seat/);
  expect(first.next?.action).toBe('returned-history');
  expect(first.next?.sentence).toMatch(/hours.*where it sat.*oil.*lash/);
  expect(arm([note(50, 'note')]).next?.sentence).not.toMatch(/sits on which valve/);
});
