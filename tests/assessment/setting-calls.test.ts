import { expect, test } from 'vitest';
import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import type {
  Evidence,
  LashEvidence,
  TipMarkEvidence,
  WorkingEvidence,
} from '../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../server/mechanics/kit/si.ts';
import { sentencesOf } from '../mechanics/assessment/laws/law.ts';
import { PLAIN } from '../mechanics/assessment/plain-build.ts';
import { facesOf, linesOf } from '../tools/call-faces.ts';
import { callOf, recordOf } from '../tools/record-of-evidence.ts';
import { tellsToTurn } from '../tools/tells-to-turn.ts';
import { assessAsTold } from '../tools/told/assess-as-told.ts';

const assess = assessAsTold('setting-calls');

/*
 * Calls about tip marks, adjusters and timing, each entered in three orders: whatever came first, the same is said. The
 * figures are invented; what they come to is by hand, beside each call.
 */

const DEG = Math.PI / 180;

type Entry =
  | { readonly list: 'tipMarks'; readonly entry: TipMarkEvidence }
  | { readonly list: 'lash'; readonly entry: LashEvidence }
  | { readonly list: 'workings'; readonly entry: WorkingEvidence };

let ids = 0;
const id = () => {
  ids += 1;
  return `entry-${String(ids).padStart(3, '0')}`;
};

function mark(width: number, at: number | 'valley' | 'exhaust', more: Partial<TipMarkEvidence> = {}): Entry {
  const side = typeof at === 'string' ? at : at === 0 ? 'centred' : at > 0 ? 'exhaust' : 'valley';
  return {
    list: 'tipMarks',
    entry: {
      id: id(),
      line: 0,
      standing: true,
      cylinder: 3,
      valve: 'intake',
      width: width * IN,
      side,
      ...(typeof at === 'number' && at !== 0 ? { off: Math.abs(at) * IN } : {}),
      readAs: `${width} in wide`,
      ...more,
    },
  };
}
const rod = (inches: number) => ({ pushrod: inches * IN });
const shims = (inches: number) => ({ shims: inches * IN });

const lash = (inches: number, day: string, more: Partial<LashEvidence> = {}): Entry => ({
  list: 'lash',
  entry: {
    id: id(),
    line: 0,
    standing: true,
    cylinder: 2,
    valve: 'exhaust',
    gap: { value: inches * IN },
    readAs: `${inches} in`,
    moment: 'set',
    engine: 'hot',
    nut: 'held',
    day,
    ...more,
  },
});

const stop = (off: number): Entry => ({
  list: 'workings',
  entry: {
    line: 0,
    computation: 'top-dead-centre',
    timing: { of: 'stop', correction: off * DEG, trueReading: 36 * DEG },
  },
});
const peak = (side: 'intake' | 'exhaust', at: number, advance: number, righted = false): Entry => ({
  list: 'workings',
  entry: {
    line: 0,
    computation: 'centreline',
    // Earlier is before the card's on an intake, and further before TDC than it on an exhaust.
    timing: {
      of: 'peak',
      side,
      fromEvents: false,
      centreline: at * DEG,
      card: (side === 'intake' ? at + advance : at - advance) * DEG,
      righted,
    },
  },
});

/** The entries in an order, each on its line. */
function entered(base: Partial<Evidence>, entries: readonly Entry[]): Evidence {
  const lined = entries.map(({ list, entry }, index) => ({ list, entry: { ...entry, line: index + 1 } }));
  const of = <List extends Entry['list']>(list: List) =>
    lined.flatMap((each) => (each.list === list ? [each.entry] : []));
  return {
    ...PLAIN,
    ...base,
    tipMarks: of('tipMarks').filter((entry): entry is TipMarkEvidence => 'width' in entry),
    lash: of('lash').filter((entry): entry is LashEvidence => 'gap' in entry),
    workings: of('workings').filter((entry): entry is WorkingEvidence => 'computation' in entry),
  };
}

const ORDERS: readonly ((entries: readonly Entry[]) => readonly Entry[])[] = [
  (entries) => entries,
  (entries) => entries.toReversed(),
  (entries) => [...entries.filter((_, at) => at % 2 === 1), ...entries.filter((_, at) => at % 2 === 0)],
];

const advice = ({ details }: Assessment) => details.marks.valves.map(({ advice: said }) => said ?? '');
const codes = ({ questions }: Assessment) => questions.map(({ code }) => code);
const headlines = ({ headlines: all }: Assessment, step: string) =>
  all.filter((each) => each.step === step).map(({ sentence }) => sentence);

/** Least sweep of .350 × 1.6 less nothing, .560, on 1.48: .560²/(8 × 1.48) = .0265 and a little; ordinary to .047. */
const STUD = { engine: { ...PLAIN.engine, mounting: 'stud' as const } };
const SHAFT = { engine: { ...PLAIN.engine, mounting: 'shaft' as const } };
const V8 = { engine: { cylinders: 8, firingOrder: '18436572', lifter: 'solid-roller' as const } };

interface Call {
  readonly name: string;
  readonly base: Partial<Evidence>;
  readonly entries: readonly Entry[];
  /** Of timing a record without its inputs can’t be shown. */
  readonly shown?: false;
  check(assessment: Assessment): void;
}

const CALLS: readonly Call[] = [
  {
    name: 'one mark toward the valley, nobody measured how far',
    base: STUD,
    entries: [mark(0.06, 'valley', rod(7.8))],
    check: (said) => {
      expect(advice(said)).toEqual([
        expect.stringMatching(/^Lengthen the pushrod by \.050 in, to 7\.850 in/),
      ]);
      expect(codes(said)).toEqual(['mark-wide']);
    },
  },
  {
    name: 'three lengths, wide: least between them',
    base: STUD,
    // Slopes −.70 and .30 per inch about 7.775 and 7.825: level at 7.810, where the curve is .0545 wide.
    entries: [mark(0.09, -0.05, rod(7.75)), mark(0.055, -0.02, rod(7.8)), mark(0.07, 0.01, rod(7.85))],
    check: (said) => {
      expect(advice(said)).toEqual([
        expect.stringMatching(/^Lengthen the pushrod by \.010 in, to 7\.810 in/),
      ]);
      expect(codes(said)).toEqual(['mark-wide']);
    },
  },
  {
    name: 'three lengths, narrowest in the middle and still wide: no length mends it',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.085, 0.04, rod(7.85)), mark(0.07, 0.02, rod(7.8)), mark(0.08, -0.01, rod(7.75))],
    check: (said) => {
      expect(headlines(said, 'geometry')).toEqual([
        expect.stringMatching(
          /^Tip mark of 3 intake at 7\.800 in: \.070 in wide, \.020 in toward the exhaust side\. Wide: over the ordinary \.047 in.*narrowest at 7\.800 in, and no length makes it ordinary: look at the heights/,
        ),
      ]);
      expect(said.next).toMatchObject({
        step: 'geometry',
        sentence: expect.stringMatching(/look at the heights/),
      });
    },
  },
  {
    name: 'wide toward the exhaust side on a stud: too long, and that is next',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.085, 0.04, rod(7.85))],
    check: (said) => {
      const told = /too long: try 7\.800 in, and ink again/;
      expect(headlines(said, 'geometry')).toEqual([expect.stringMatching(told)]);
      expect(said.next).toMatchObject({ step: 'geometry', sentence: expect.stringMatching(told) });
    },
  },
  {
    name: 'sideways: no length mends that',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.045, 0, { side: 'sideways', off: 0.05 * IN, ...rod(7.8) })],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(/\.050 in off sideways.*No length mends that/);
      expect(said.next?.sentence).toMatch(/line up the guide plate/);
    },
  },
  {
    name: 'narrower than the lift can sweep: inked whole, and again',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.015, 0, rod(7.8))],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(/Too narrow to be all of it/);
      expect(said.next?.sentence).toMatch(/ink the whole tip/);
    },
  },
  {
    name: 'ordinary and centred: that is the length',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.075, 0.035, rod(7.85)), mark(0.044, 0, rod(7.8))],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(
        /Ordinary: that is up to \.047 in.*7\.800 in is the length/,
      );
      expect(said.next?.step).toBe('notes');
    },
  },
  {
    name: 'a longer pushrod that went the wrong way',
    base: STUD,
    entries: [mark(0.05, -0.01, rod(7.75)), mark(0.05, -0.045, rod(7.8))],
    check: (said) => {
      expect(advice(said)).toEqual([expect.stringMatching(/^These marks contradict each other/)]);
      expect(codes(said)).toEqual(['length-moves-nothing']);
    },
  },
  {
    name: 'a length told to a gauge beside one over the ends is one length: 7.783 + .017',
    base: STUD,
    entries: [
      mark(0.045, -0.03, { ...rod(7.783), pushrodOver: 'gauge' }),
      mark(0.045, 0.03, { ...rod(7.8), pushrodOver: 'ends' }),
    ],
    check: (said) => expect(codes(said)).toEqual(['marks-contradict']),
  },
  {
    // 7.100 and 7.050 over the ends are 7.083 and 7.033 by a gauge, .017 less; .050 on from 7.010 is 6.960, 6.977 over.
    name: 'lengths told both ways: what is next is told as the mark in hand was, with the other way beside it',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [
      mark(0.095, 0.035, { ...rod(7.1), pushrodOver: 'ends' }),
      mark(0.07, 0.015, { ...rod(7.05), pushrodOver: 'ends' }),
      mark(0.062, 0, { ...rod(7.01), pushrodOver: 'gauge' }),
    ],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(
        /at 7\.010 in by gauge.*Next try 6\.960 in by gauge, 6\.977 in over its ends/,
      );
      expect(said.questions.map(({ ask }) => ask).join(' ')).toMatch(
        /Would 6\.960 in by gauge.*That is \.050 in shorter/,
      );
    },
  },
  {
    name: 'a length of which nobody said over what, among others told by gauge, is asked before one is tried',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [
      mark(0.085, 0.03, { ...rod(7.1), pushrodOver: 'gauge' }),
      mark(0.07, 0.015, { ...rod(7.05), pushrodOver: 'gauge' }),
      mark(0.062, 0, rod(7.02)),
    ],
    check: (said) => {
      expect(codes(said)).toEqual(['length-over-what']);
      expect(headlines(said, 'geometry')[0]).toMatch(/Say first over what each pushrod length was taken/);
      expect(said.next).toMatchObject({ action: 'length-over-what', turns: false });
    },
  },
  {
    name: 'a length that was inked and was wide is not tried again for its place',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [
      mark(0.085, 0.03, rod(7.1)),
      mark(0.07, 0.015, rod(7.05)),
      mark(0.062, 0, rod(7.02)),
      mark(0.03, -0.01, rod(7)),
    ],
    check: (said) => expect(headlines(said, 'geometry')[0]).toMatch(/7\.000 in is the length/),
  },
  {
    name: 'one mark alone is not called wide',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.085, 0.04, rod(7.85))],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(/One mark alone can’t be called wide/);
      expect(said.judgements.find(({ id }) => id.startsWith('mark:'))?.word).toBe('cannot-tell');
    },
  },
  {
    name: 'a mark whose length was told is gone on from, not one without',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.085, 0.035), mark(0.095, 0.035, rod(7.1))],
    check: (said) =>
      expect(headlines(said, 'geometry')[0]).toMatch(/at 7\.100 in: \.095 in wide.*try 7\.050 in/),
  },
  {
    name: 'sideways on a shaft: there is no plate and no stud',
    base: { ...SHAFT, call: { ...PLAIN.call, goal: 'geometry' } },
    entries: [mark(0.045, 0, { side: 'sideways', off: 0.05 * IN })],
    check: (said) => {
      expect(headlines(said, 'geometry')[0]).toMatch(/spacers on its shaft/);
      expect(JSON.stringify(said.questions)).not.toMatch(/guide plate|the stud/);
    },
  },
  {
    name: 'two heights of a stand',
    base: SHAFT,
    entries: [mark(0.09, 0.02, shims(0)), mark(0.07, 0.03, shims(0.03))],
    check: (said) => {
      expect(advice(said)).toEqual([
        expect.stringMatching(/^Raise the stands by \.050 in, to \.080 in of shims/),
      ]);
      expect(codes(said)).toEqual(['mark-wide']);
    },
  },
  {
    name: 'set to .006 on a solid roller, with the firing order known',
    base: V8,
    entries: [lash(0.02, '2026-03-01'), lash(0.006, '2026-03-09')],
    check: (said) => {
      expect(codes(said)).toEqual(['lash-unusual']);
      // As workshop manuals print it, from memory.
      expect(said.details.lash.setting.twoPositions?.map(({ intakes }) => intakes.join(' '))).toEqual([
        '1 2 5 7',
        '3 4 6 8',
      ]);
      // An even V8 fires every 90°: so do the places where it is set.
      for (const at of ['setIntakeAt', 'setExhaustAt'] as const)
        expect(
          said.details.lash.setting.rows.map(
            (row, index, all) => (row[at] - (all[index - 1] ?? row)[at] + 720) % 720,
          ),
        ).toEqual([0, 90, 90, 90, 90, 90, 90, 90]);
    },
  },
  {
    // Set at another heat than the card’s is for: its figure is another one.
    name: 'the card’s lash is hot and it was set cold: asked',
    base: {
      ...STUD,
      card: { ...PLAIN.card, lashAt: 'hot', exhaust: { ...PLAIN.card.exhaust, lash: 0.022 * IN } },
    },
    entries: [lash(0.018, '2026-03-01', { engine: 'cold' })],
    check: (said) => {
      expect(said.questions.find(({ code }) => code === 'lash-unusual')?.ask).toBe(
        'Was it meant to be set cold, with the card’s lash for a hot engine?',
      );
    },
  },
  {
    // Found held at another heat than it was set at: that says nothing of what it did.
    name: 'a nut that had moved stands until it was set and found held at one heat',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'adjuster' } },
    entries: [
      lash(0.028, '2026-03-01', { moment: 'found', nut: 'moved' }),
      lash(0.02, '2026-03-02', { nut: 'not-looked' }),
      lash(0.026, '2026-03-03', { moment: 'found', engine: 'cold' }),
    ],
    check: (said) => {
      expect(said.notToRun.map(({ id }) => id)).toContain('not-to-run:noise-nut:log');
      expect(said.details.noise.active).toBe(true);
    },
  },
  {
    name: 'the same once it was set and found held at one heat',
    base: { ...STUD, call: { ...PLAIN.call, goal: 'adjuster' } },
    entries: [
      lash(0.028, '2026-03-01', { moment: 'found', nut: 'moved' }),
      lash(0.02, '2026-03-02', { nut: 'not-looked' }),
      lash(0.021, '2026-03-03', { moment: 'found' }),
    ],
    check: (said) => expect(said.notToRun).toEqual([]),
  },
  {
    name: 'a cam 4° early, nobody read the stop',
    base: {},
    entries: [peak('intake', 102, 4), lash(0.02, '2026-03-01')],
    shown: false,
    check: (said) => {
      expect(headlines(said, 'timing')).toEqual([
        expect.stringMatching(
          /top dead centre is not proved.*No word against the card before that\. If it is 4° advanced.*costs intake gap/,
        ),
      ]);
      expect(said.quantities.find(({ name }) => name === 'Centreline of the intake')?.lacks).toEqual([
        'top dead centre by a positive stop',
      ]);
    },
  },
  {
    name: 'the stop read, its error taken off; the two lobes 5° apart',
    base: {},
    entries: [stop(0.75), peak('intake', 108, -3, true), peak('exhaust', 112, 2, true)],
    shown: false,
    check: (said) => {
      expect(headlines(said, 'timing').join(' ')).not.toContain('not proved');
      expect(headlines(said, 'timing')[0]).toMatch(
        /3° retarded.*Retard costs exhaust gap.*before top dead centre/,
      );
      expect(codes(said)).toEqual(['lobes-apart']);
    },
  },
  {
    name: 'a mark off the edge: nothing is turned, set or changed',
    base: { engine: { ...V8.engine, mounting: 'stud' } },
    entries: [mark(0.12, 0.125, { stem: 0.342 * IN, ...rod(7.8) }), lash(0.02, '2026-03-01')],
    check: (said) => {
      expect(said.stop.map(({ code }) => code)).toEqual(['mark-at-the-edge']);
      expect(advice(said)).toEqual([expect.stringMatching(/^Not while the stop stands; after it: shorten/)]);
      expect(said.details.lash.setting.rows).toEqual([]);
    },
  },
];

const inOrders = ({ base, entries }: Call) => ORDERS.map((order) => entered(base, order(entries)));

test.each(CALLS)('$name: the same is said in each of three orders', (call) => {
  for (const evidence of inOrders(call)) call.check(assess(evidence));
  // Lines cite entries by their number, which is all that an order may change.
  const [first, ...others] = inOrders(call).map((evidence) => sentencesOf(assess(evidence)));
  for (const each of others) expect(each).toEqual(first);
});

test.each(CALLS.filter(({ shown }) => shown !== false))(
  '$name: the report says it too, and under a stop no page tells anybody to turn it',
  ({ base, entries }) => {
    const evidence = entered(base, entries);
    const assessment = assess(evidence);
    const faces = facesOf(recordOf(evidence), callOf(evidence).id);
    const report = linesOf(faces.find(({ name }) => name === 'report')?.html ?? '').join(' ');
    for (const said of advice(assessment)) expect(report).toContain(said);
    if (assessment.stop.length > 0)
      expect(faces.flatMap(({ html }) => linesOf(html).flatMap(tellsToTurn))).toEqual([]);
  },
);
