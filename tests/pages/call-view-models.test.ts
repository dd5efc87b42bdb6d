import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { ratioFigure } from '../../server/call/ratio-text.ts';
import { changedFields, mergeSpec } from '../../server/call/spec/merge-spec.ts';
import { specText } from '../../server/call/spec/spec-texts.ts';
import { tapeText } from '../../server/call-pages/tape-text.ts';
import type { EventDefinition } from '../../server/events/define-events.ts';
import { ARM_EVENTS } from '../../server/records/arms/events.ts';
import { TRIAGE_EVENTS } from '../../server/records/calls/events.ts';
import { NOTE_EVENTS } from '../../server/records/notes/events.ts';
import { READING_EVENTS } from '../../server/records/readings/events.ts';
import { TOLD } from '../../server/steps/index.ts';
import { runsAt } from '../../server/steps/ratio/dial-view.ts';
import { turnsOf } from '../../shared/quantities/dial-words.ts';
import { buildSpec } from '../../shared/schemas/build-spec.ts';

const spec = buildSpec.parse({
  engine: { lifter: 'solid-roller', bore: '4.030 in', stroke: '88.4 mm' },
  cam: { assumedRatio: 1.7, intake: { lobeLift: '.482 in', lash: '.016 in' } },
});

describe('a part of the specification kept from a form', () => {
  it('changes what the form has and leaves the rest as it was', () => {
    const merged = mergeSpec(spec, { 'cam.assumedRatio': '1.75', 'cam.intake.lobeLift': '.482 in' });
    if (!merged.ok) throw new Error(JSON.stringify(merged.faults));
    expect(merged.spec.cam?.assumedRatio).toBe(1.75);
    expect(merged.spec.engine?.lifter).toBe('solid-roller');
    expect(merged.spec.engine?.stroke).toMatchObject({ typed: '88.4 mm', value: 88.4, unit: 'mm' });
    expect(merged.spec.cam?.intake).toEqual(spec.cam?.intake);
  });

  it('takes out what was emptied, and the branch with its last entry', () => {
    const merged = mergeSpec(spec, {
      'cam.intake.lobeLift': '',
      'cam.intake.lash': ' ',
      'cam.assumedRatio': '1.7',
    });
    if (!merged.ok) throw new Error(JSON.stringify(merged.faults));
    expect(merged.spec.cam).toEqual({ assumedRatio: 1.7 });
  });

  it('a metric entry shown in a form of inches is not read as inches when it comes back', () => {
    const shown = specText(spec, 'engine.stroke');
    // 88.4 mm is 3.48 in by 25.4 mm to the inch (NIST SP 811, B.8).
    expect(shown).toBe('88.4 mm');
    expect(changedFields(spec, { 'engine.stroke': shown })).toEqual([]);
    const merged = mergeSpec(spec, { 'engine.stroke': '3.48' });
    expect(merged.ok && merged.spec.engine?.stroke?.unit).toBe('in');
  });

  it('the rows of a list come and go together, empty ones left out', () => {
    const merged = mergeSpec(spec, {
      'cam.intake.durations.0.atLift': '',
      'cam.intake.durations.0.duration': '',
      'cam.intake.durations.1.atLift': '.050',
      'cam.intake.durations.1.duration': '254',
    });
    if (!merged.ok) throw new Error(JSON.stringify(merged.faults));
    expect(merged.spec.cam?.intake?.durations).toHaveLength(1);
    expect(specText(merged.spec, 'cam.intake.durations.0.duration')).toBe('254');
  });

  it('a fault names its field and says what came', () => {
    const merged = mergeSpec(spec, { 'engine.bore': '4 parsecs' });
    expect(merged.ok).toBe(false);
    expect(!merged.ok && merged.faults[0]?.field).toBe('engine.bore');
  });
});

describe('the dial of a reading', () => {
  // Trade practice 2.1, common practice, no published source: reading = turns × travel per turn + needle.
  it.each([
    [0.482, 0.1, 4, 0.082],
    [0.5, 0.1, 5, 0],
    [0.3, 0.1, 3, 0],
    [0.0999, 0.1, 0, 0.0999],
    [12.24 / 25.4, 1 / 25.4, 12, 0.24 / 25.4],
  ])('%f in at %f in a turn is %i turns and the needle', (lift, perTurn, turns, needle) => {
    const found = turnsOf(lift, perTurn);
    expect(found.turns).toBe(turns);
    expect(found.needle).toBeCloseTo(needle, 9);
  });

  it('the plunger goes in at the lifter and comes out at the valve', () => {
    expect(runsAt('lobe-lift')).toBe('clockwise');
    expect(runsAt('valve-lift')).toBe('anticlockwise');
  });
});

describe('what is said of a ratio', () => {
  it('shows no digit finer than the interval allows', () => {
    const figure = ratioFigure({ ratio: 1.757, standardUncertainty: 0.004, coverageFactor: 2 });
    expect(figure).toEqual({ value: '1.757', spread: '.008', text: '1.757 ± .008' });
  });
});

const ID = '0b0c3a52-6f0e-4b7a-9a51-3d1f0f6c2a11';
const names = { valveOf: () => '5 intake', gear: 'pushrod', adjuster: 'stud' } as const;

/** What the tape says of an event; its data is checked against its definition here as where it is emitted. */
const told = <Data extends z.ZodObject>(
  { name, data: schema }: EventDefinition<string, Data>,
  data: NoInfer<z.output<Data>>,
) => {
  expect(schema.safeParse(data).error, name).toBeUndefined();
  return tapeText(TOLD, { kind: name, data }, names);
};

const arm = { armId: ID, name: 'arm A', family: '', ratioStamp: '1.75', otherNumber: '', boxLabel: '' };
const promise = { callId: ID, kind: 'promise', body: 'Send the chart', restsOn: '' } as const;
const pass = { setUpId: ID, kind: 'valve-lift', pass: 2 } as const;
const corrected = { replaces: '.466 in', replacesId: ID, reason: 'one turn missed' };

describe('the tape says', () => {
  it.each([
    [
      told(TRIAGE_EVENTS['hold-set'], { callId: ID, reason: 'tight' }),
      { kind: 'hold', text: 'Do not turn it: tight' },
    ],
    [
      told(TRIAGE_EVENTS.triage, { callId: ID, engineState: 'apart', contact: 'none' }),
      { kind: 'answer', text: 'It is apart. Nothing hit, bent, tight or loose.' },
    ],
    [
      told(ARM_EVENTS['arm-added'], arm),
      {
        kind: 'note',
        text: 'arm A: ratio stamp “1.75”, other number not said, box label not said',
      },
    ],
    [
      told(NOTE_EVENTS['promise-kept'], { ...promise, owner: 'Ada', due: '2036-11-27' }),
      { kind: 'promise', text: 'Send the chart', due: 'Ada, by 27 Nov 2036' },
    ],
    [
      told(NOTE_EVENTS['promise-kept'], { ...promise, owner: '' }),
      { kind: 'promise', text: 'Send the chart', due: 'no owner named' },
    ],
    [
      told(READING_EVENTS['reading-kept'], { ...pass, typed: '.566', readAs: '.566 in', counted: true }),
      { kind: 'reading', text: 'Valve lift, 5 intake, pass 2; small hand read', value: '.566 in' },
    ],
    [
      told(READING_EVENTS['reading-replaced'], { ...pass, ...corrected, typed: '.566', readAs: '.566 in' }),
      { kind: 'reading', text: 'Valve lift, 5 intake, pass 2, in place of .466 in', value: '.566 in' },
    ],
    [
      told(READING_EVENTS['reading-struck'], { ...pass, ...corrected }),
      { kind: 'note', text: 'Valve lift, 5 intake, pass 2: .466 in struck out, one turn missed' },
    ],
  ])('%o as %o', (words, expected) => {
    expect(words).toEqual(expected);
  });
  it('nothing is copied from one mark to another', () => {
    const { text } = told(ARM_EVENTS['arm-added'], { ...arm, name: 'A', ratioStamp: '', boxLabel: '1.75' });
    expect(text).toBe('A: ratio stamp not said, other number not said, box label “1.75”');
  });
  it.each([
    ['something-new', {}, 'something new'],
    ['reading-kept', { kind: 'valve-lift' }, 'reading kept'],
    ['reading-kept', [], 'reading kept'],
    ['constructor', {}, 'constructor'],
  ] as const)('an event that can’t be read, %s with %o, by its name', (kind, data, text) => {
    expect(tapeText(TOLD, { kind, data }, names)).toEqual({ kind: 'note', text });
  });
});
