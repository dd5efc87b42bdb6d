import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import type { ValveGear } from '../../../shared/schemas/words.ts';
import { geared } from './geared.ts';
import { PLAIN, read, SET_UP } from './plain-build.ts';

/** What does not apply to a valve gear: how each is made, general knowledge from memory. The figures are invented. */

const gone = (evidence: Evidence) => assess(evidence).details.gear.steps.map(({ step }) => step);

describe('what does not apply', () => {
  test('pushrods: nothing is gone and nothing is said', () => {
    const said = assess(PLAIN);
    expect(said.details.gear.steps).toEqual([]);
    expect(said.notCovered).toEqual([]);
    expect(assess({ ...PLAIN, engine: { ...PLAIN.engine, gear: 'pushrod' } })).toEqual(said);
  });

  test('buckets have no rocker: no ratio, no arm, no tip; lash and timing are there', () => {
    expect(gone(geared('bucket'))).toEqual(['parts', 'identify', 'ratio', 'consequences', 'geometry']);
    const { parts, kinds } = assess(geared('bucket')).details.gear;
    expect(parts).toEqual(expect.arrayContaining(['pushrod-length', 'lifter-preload', 'adjuster']));
    expect(parts).not.toContain('lash-shim');
    expect(kinds).toEqual(['pushrod-to-head', 'slot-to-stud', 'preload', 'rocker-to-retainer']);
  });

  test('followers keep the ratio, and have no pushrod', () => {
    for (const gear of ['finger-follower', 'cam-rocker'] as const) {
      expect(gone(geared(gear))).toEqual(['identify', 'consequences']);
      expect(assess(geared(gear)).details.gear.parts).toEqual(
        expect.arrayContaining(['pushrod-length', 'shims']),
      );
      expect(assess(geared(gear)).details.gear.parts).not.toContain('follower-ratio');
    }
  });

  test('each thing that is not covered says what to do instead', () => {
    for (const gear of ['bucket', 'finger-follower', 'cam-rocker'] as const) {
      const { notCovered } = assess(geared(gear));
      expect(notCovered.length).toBeGreaterThan(2);
      for (const { sentence, instead } of notCovered) {
        expect(sentence).toMatch(/\.$/);
        expect(instead).toMatch(/\.$/);
      }
    }
    const soft = assess({ ...geared('bucket'), engine: { gear: 'bucket', lifter: 'hydraulic-flat' } });
    expect(soft.notCovered.map(({ id }) => id)).toContain('not-covered:hydraulic-bucket');
  });

  test('no step that is gone is asked for, whatever the call is about', () => {
    for (const goal of ['verify-ratio', 'choose-ratio', 'geometry', 'identify', 'adjuster'] as const) {
      const evidence = geared('bucket', { call: { ...PLAIN.call, goal } });
      const { needs, next } = assess(evidence);
      const asked = new Set<string>([...needs.map(({ step }) => step), next?.step ?? '']);
      for (const step of gone(evidence)) expect([goal, asked.has(step)]).toEqual([goal, false]);
      expect(needs.map(({ what }) => what)).not.toContain('the ratio the card assumes');
    }
  });
});

/* Its pivot sets tip, cam contact and lash at once: how such a rocker is made, from memory. */
describe('a tip mark on an overhead cam', () => {
  const mark = (more: Partial<Evidence['tipMarks'][number]> = {}): Evidence['tipMarks'] => [
    {
      ...{ id: 'mark', line: 1, standing: true, cylinder: 1, valve: 'intake', width: 0.06 * IN, readAs: '' },
      ...{ side: 'exhaust', off: 0.03 * IN },
      ...more,
    },
  ];
  const geometry = { ...PLAIN.call, goal: 'geometry' } as const;

  test.each(['shaft', undefined] as const)(
    'cam-rocker, mounting %s: nobody is asked how it is mounted, or sent to a shim',
    (mounting) => {
      for (const side of ['exhaust', 'sideways'] as const) {
        const evidence = geared('cam-rocker', { call: geometry, tipMarks: mark({ side }) });
        const said = assess({
          ...evidence,
          engine: { ...evidence.engine, ...(mounting === undefined ? {} : { mounting }) },
        });
        const all = [
          ...said.headlines.map(({ sentence }) => sentence),
          ...said.questions.map(({ ask }) => ask),
        ].join(' ');
        expect(all).not.toMatch(/mounted|stud|shim|plate|pushrod|stands/);
        expect(said.details.marks.valves[0]?.first?.said).toMatch(/overhead cam is not worked out/);
        expect(said.notCovered.map(({ id }) => id)).toContain('not-covered:mark-moved');
      }
    },
  );

  test('a bucket has no tip: which of the two is so comes first, and no arm is measured', () => {
    const said = assess(geared('bucket', { call: geometry, tipMarks: mark() }));
    expect(said.next?.action).toBe('valve-gear');
    const [question] = said.questions.filter(({ code }) => code === 'valve-gear');
    expect(question?.weight).toBe('strong');
    const settled = assess(
      geared('bucket', {
        call: geometry,
        tipMarks: mark(),
        answers: [
          {
            ...{ id: 'a', line: 9, code: 'valve-gear', questionId: question?.id ?? '', question: '' },
            ...{ answer: 'not-found', found: false },
          },
        ],
      }),
    );
    expect(settled.next?.action).not.toBe('valve-gear');
    expect(settled.needs.map(({ id }) => id)).not.toContain('need:geometry:least-sweep');
  });

  test('without a card no lobe is read for a ratio that a bucket has not', () => {
    const bare = geared('bucket', { card: { intake: {}, exhaust: {} } });
    expect(assess(bare).next?.action).not.toMatch(/^lobe-lift/);
    expect(
      assess({ ...bare, engine: { ...bare.engine, gear: 'cam-rocker' } })
        .missing.filter(({ must }) => must)
        .map(({ id }) => id),
    ).toContain('missing:cam:lobe-lift-intake');
  });
});

/* A hydraulic lifter takes up what a lash would be: its cam's card has none. */
test('no lash is read off the card of a hydraulic cam', () => {
  const needs = (lifter: 'hydraulic-flat' | 'solid-flat') =>
    assess({
      ...PLAIN,
      call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
      engine: { ...PLAIN.engine, lifter },
    }).needs.map(({ id }) => id);
  expect(needs('solid-flat')).toContain('need:cam:card-lash');
  expect(needs('hydraulic-flat')).not.toContain('need:cam:card-lash');
});

describe('changing the valve gear', () => {
  const withRatio = { setUps: [SET_UP] };

  test('keeps every entry in sight, and asks which of the two is so', () => {
    const said = assess(geared('bucket', withRatio));
    expect(said.details.gear.steps.map(({ step }) => step)).not.toContain('ratio');
    const [question] = said.questions.filter(({ code }) => code === 'valve-gear');
    expect(question?.ask).toContain('readings of a ratio are on record');
    expect(question?.restsOn).toEqual([SET_UP.id]);
    expect(assess({ ...PLAIN, ...withRatio }).questions.filter(({ code }) => code === 'valve-gear')).toEqual(
      [],
    );
  });

  test('of an overhead cam no gap is calculated; one that was measured is judged as ever', () => {
    const sheet = [read(1, 'intake', 'retainer-to-seal', 0.02)];
    const said = assess(geared('bucket', { sheet }));
    expect(said.judgements.filter(({ word }) => word === 'short')).toHaveLength(1);
    const before = assess({ ...PLAIN, taken: { intake: { closedGapAtTdc: 0.5 * IN }, exhaust: {} } });
    const basis = (all: typeof before) =>
      all.details.change.flatMap(({ gaps }) => gaps.flatMap(({ after }) => after?.basis ?? []));
    expect(basis(before)).toContain('calculated');
    expect(basis(said)).not.toContain('calculated');
    expect(said.headlines.map(({ step }) => step)).not.toContain('consequences');
  });

  test('a valve lift level with its lobe raises no doubt on buckets, and does on pushrods', () => {
    const sheet = [read(1, 'intake', 'lobe-lift', 0.35), read(1, 'intake', 'valve-lift', 0.35)];
    const card = { intake: {}, exhaust: {} };
    const codes = (gear: ValveGear) =>
      assess(geared(gear, { sheet, card })).questions.map(({ code }) => code);
    expect(codes('bucket')).not.toContain('gross-lift-as-lobe');
    expect(codes('pushrod')).toContain('gross-lift-as-lobe');
  });
});
