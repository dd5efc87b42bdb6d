import { UNITS } from '../../../shared/quantities/units.ts';
import { siOf } from '../../../shared/schemas/entered.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { markQuestions } from '../../mechanics/tip-mark/mark-questions.ts';
import type { Mark, MarkQuestion } from '../../mechanics/tip-mark/types.ts';
import { getBuild } from '../../records/builds/builds.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { Limit } from '../../records/limits/known-limits.ts';
import { limitsInForce } from '../../records/limits/limits.ts';
import { listPartReadings } from '../../records/part-readings/part-readings.ts';
import { listSetUps } from '../../records/set-ups/set-ups.ts';
import type { TipMark } from '../../records/tip-marks/tip-mark-table.ts';
import { listTipMarks } from '../../records/tip-marks/tip-marks.ts';
import { listWorkings, type Working } from '../../records/workings/workings.ts';
import { setUpRatio } from '../ratio/ratio.ts';
import { type LeastSweep, leastSweepOf } from './least-sweep.ts';

type Side = 'intake' | 'exhaust';

/** The marks of one valve, what they are set against, and what the newest of them raises. */
export interface MarkedValve {
  readonly cylinder: number;
  readonly valve: Side;
  /** In the order of entry; those that stand. */
  readonly marks: readonly TipMark[];
  readonly least: LeastSweep;
  /** Metres; the least and what the limit allows over it. */
  readonly lookAgainOver: number | undefined;
  readonly questions: readonly MarkQuestion[];
}

export interface JudgedMarks {
  /** All of them, replaced and struck ones included. */
  readonly marks: readonly TipMark[];
  readonly valves: readonly MarkedValve[];
  readonly least: Readonly<Record<Side, LeastSweep>>;
  readonly limit: Limit;
}

const markOf = ({ width, side, off, pushrod }: TipMark): Mark => ({
  width: siOf(width),
  side,
  off: off === undefined ? 0 : siOf(off),
  ...(pushrod === undefined ? {} : { pushrod: siOf(pushrod) }),
});

/** The newest light ratio that was measured on a valve of the side. */
async function lightRatio(
  tx: Tx,
  principal: Principal,
  buildId: string,
  side: Side,
): Promise<number | undefined> {
  const setUps = await listSetUps(tx, principal, buildId);
  for (const setUp of setUps.toReversed()) {
    if (setUp.valve !== side || setUp.method.spring !== 'light') continue;
    const { result } = await setUpRatio(tx, principal, buildId, setUp.id);
    if (result !== undefined) return result.ratio;
  }
  return undefined;
}

/** The marks of a build with what each is set against; the service behind the JSON route and the page. */
export async function judgedMarks(
  tx: Tx,
  principal: Principal,
  buildId: string,
  known?: { readonly workings: readonly Working[] },
): Promise<JudgedMarks> {
  const { spec } = await getBuild(tx, principal, buildId);
  const parts = await listPartReadings(tx, principal, buildId);
  const workings = known?.workings ?? (await listWorkings(tx, principal, buildId));
  const marks = await listTipMarks(tx, principal, buildId);
  const limit = (await limitsInForce(tx, principal.shopId)).get('sweep-over-least');
  if (limit === undefined) throw new Error('there is no limit for the sweep');
  const overLeast = limit.value.value * UNITS[limit.value.unit].toSi;
  const leastOf = async (side: Side) =>
    leastSweepOf(side, { spec, parts, workings, measured: await lightRatio(tx, principal, buildId, side) });
  const least = { intake: await leastOf('intake'), exhaust: await leastOf('exhaust') };
  const standing = stillStanding(marks);
  const names = [...new Set(standing.map(({ cylinder, valve }) => `${cylinder} ${valve}`))];
  const ofValve = (name: string) => standing.filter(({ cylinder, valve }) => `${cylinder} ${valve}` === name);
  const valves = names.flatMap((name): MarkedValve[] => {
    const own = ofValve(name);
    const [first] = own;
    if (first === undefined) return [];
    const { cylinder, valve } = first;
    const { value } = least[valve];
    const stem = own.findLast((each) => each.stem !== undefined)?.stem;
    const questions = markQuestions(own.map(markOf), {
      leastSweep: value,
      overLeast,
      mounting: spec.engine?.rockerMounting,
      stem: stem === undefined ? undefined : siOf(stem),
      beside: standing.filter((each) => each.valve === valve && each.cylinder !== cylinder).map(markOf),
    });
    return [
      {
        cylinder,
        valve,
        marks: own,
        least: least[valve],
        lookAgainOver: value === undefined ? undefined : value + overLeast,
        questions,
      },
    ];
  });
  return { marks, valves, least, limit };
}
