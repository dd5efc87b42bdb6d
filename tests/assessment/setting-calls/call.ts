import { expect, test } from 'vitest';
import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import type {
  Evidence,
  LashEvidence,
  TipMarkEvidence,
  WorkingEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { sentencesOf } from '../../mechanics/assessment/laws/law.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { facesOf, linesOf } from '../../tools/call-faces.ts';
import { inThreeOrders } from '../../tools/orders.ts';
import { callOf, recordOf } from '../../tools/record-of-evidence.ts';
import { tellsToTurn } from '../../tools/tells-to-turn.ts';

/*
 * Calls about tip marks, adjusters and timing, each entered in three orders: whatever came first, the same is said. The
 * figures are invented; what they come to is by hand, beside each call.
 */

export type Entry =
  | { readonly list: 'tipMarks'; readonly entry: TipMarkEvidence }
  | { readonly list: 'lash'; readonly entry: LashEvidence }
  | { readonly list: 'workings'; readonly entry: WorkingEvidence };

let ids = 0;
export const id = () => {
  ids += 1;
  return `entry-${String(ids).padStart(3, '0')}`;
};

export const lash = (inches: number, day: string, more: Partial<LashEvidence> = {}): Entry => ({
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

/** What the tip marks of each valve advise. */
export const advice = ({ details }: Assessment) => details.marks.valves.map(({ advice: said }) => said ?? '');

export const codes = ({ questions }: Assessment) => questions.map(({ code }) => code);
export const headlines = ({ headlines: all }: Assessment, step: string) =>
  all.filter((each) => each.step === step).map(({ sentence }) => sentence);

/** Least sweep of .350 × 1.6 less nothing, .560, on 1.48: .560²/(8 × 1.48) = .0265 and a little; ordinary to .047. */
export const STUD = { engine: { ...PLAIN.engine, mounting: 'stud' as const } };

export const V8 = { engine: { cylinders: 8, firingOrder: '18436572', lifter: 'solid-roller' as const } };

export interface Call {
  readonly name: string;
  readonly base: Partial<Evidence>;
  readonly entries: readonly Entry[];
  /** Of timing a record without its inputs can’t be shown. */
  readonly shown?: false;
  check(assessment: Assessment): void;
}

const inOrders = ({ base, entries }: Call) => inThreeOrders(entries).map((order) => entered(base, order));

/** Each call is told the same in each order, and on its report too. */
export function tellEach(calls: readonly Call[], assess: (evidence: Evidence) => Assessment): void {
  test.each(calls)('$name: the same is said in each of three orders', (call) => {
    for (const evidence of inOrders(call)) call.check(assess(evidence));
    // Lines cite entries by their number, which is all that an order may change.
    const [first, ...others] = inOrders(call).map((evidence) => sentencesOf(assess(evidence)));
    for (const each of others) expect(each).toEqual(first);
  });

  test.each(calls.filter(({ shown }) => shown !== false))(
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
}
