import type { z } from 'zod';
import { readNumber } from '../../../shared/quantities/read-number.ts';
import { inches } from '../../../shared/schemas/entered.ts';
import type { explainInput } from '../../mechanics/explain-readings/json-input.ts';
import { IN } from '../../mechanics/kit/si.ts';
import type { Answer } from '../../records/answers/answers.ts';
import type { Arm } from '../../records/arms/arms.ts';
import { specAt } from '../../records/builds/revisions.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import { type BuildRecord, setUpOf } from '../../records/whole-build/build-record.ts';
import { indicatorPlaces } from './indicator-places.ts';
import { nominalsFor } from './ratio-input.ts';

export type ExplanationInput = z.output<typeof explainInput>;
type ExplainedReading = ExplanationInput['readings'][number];
type Asked = NonNullable<ExplanationInput['answers']>[number];

/** A hand that comes back within this is on its zero: common practice, no published source. */
const ZERO_RETURNS_WITHIN = 0.002;
/** The inference takes forty readings; the latest speak of the engine as it is. */
const MOST_READINGS = 40;

/** A stamp counts as a ratio only with its point: "16" or "60" alone stays undecided. */
function ratioOfStamp(arm: Arm | undefined): number | undefined {
  const stamp = arm?.ratioStamp.trim() ?? '';
  if (!/^\d[.,]\d{1,3}$/.test(stamp)) return undefined;
  const read = readNumber(stamp, { kind: 'ratio' });
  return read.ok && read.value > 0.9 && read.value < 2.5 ? read.value : undefined;
}

const ABOUT_TURNS: ReadonlySet<string> = new Set(['turn-miscounted', 'hand-read-backwards']);
/** A program may give the word of a question as the question itself. */
const wordOf = (answer: Answer) => (answer.code === '' ? answer.question : answer.code);

/** What was put right for a reading, against the state of the first set-up. */
function putRight(reading: Reading, setUp: SetUp, first: SetUp, answers: readonly Answer[]) {
  const { lash, alignment } = setUp.method;
  const counted =
    reading.counted ||
    answers.some(
      (each) => each.setUpId === setUp.id && each.seq > reading.seq && ABOUT_TURNS.has(wordOf(each)),
    );
  return {
    ...(lash === 'zero' && first.method.lash !== 'zero' ? { lashSet: true } : {}),
    ...(alignment === 'parallel' && first.method.alignment !== 'parallel' ? { aligned: true } : {}),
    ...(counted ? { counted: true } : {}),
  };
}

interface At {
  readonly setUp: SetUp;
  readonly first: SetUp;
  readonly place: number;
  readonly elsewhere: boolean;
  readonly pass: number;
  readonly answers: readonly Answer[];
}

const OF: Readonly<Record<string, ExplainedReading['of']>> = {
  'valve-lift': 'valve-lift',
  'valve-lift-at': 'valve-lift',
  'lobe-lift': 'lobe-lift',
};

function toExplained(reading: Reading, of: ExplainedReading['of'], at: At): ExplainedReading {
  const { method } = at.setUp;
  return {
    of,
    value: inches(reading.peak) * IN,
    pass: at.pass,
    setUp: at.place,
    ...(method.spring === 'not-said' ? {} : { spring: method.spring }),
    ...(method.lifter === 'not-said'
      ? {}
      : { lifter: method.lifter === 'hydraulic' ? ('hydraulic' as const) : ('solid' as const) }),
    // The turns of the dial are doubted at the valve alone.
    ...(of === 'valve-lift' ? { perTurn: inches(method.perTurn) * IN } : {}),
    ...(reading.atLobeLift === undefined ? {} : { atLobeLift: inches(reading.atLobeLift) * IN }),
    ...putRight(reading, at.setUp, at.first, at.answers),
    ...(at.elsewhere ? { otherValve: true } : {}),
    ...(of === 'lobe-lift' && method.lobeSource === 'caliper' ? { method: 'caliper' as const } : {}),
  };
}

/** Set-ups that speak of the same arm: those of this valve, and those of the same arm on another valve. */
function relevant(setUp: SetUp, all: readonly SetUp[]): SetUp[] {
  return all.filter(
    (each) =>
      (each.cylinder === setUp.cylinder && each.valve === setUp.valve) ||
      (setUp.armId !== undefined && each.armId === setUp.armId),
  );
}

/** What looking at the zero and asking for the entries again have found. */
function askedOf(
  setUps: readonly SetUp[],
  readings: readonly Reading[],
  answers: readonly Answer[],
): Asked[] {
  const returns = readings.filter(
    (reading) => OF[reading.kind] === 'valve-lift' && reading.zeroReturn !== undefined,
  );
  const off = returns.some(
    ({ zeroReturn }) => zeroReturn !== undefined && Math.abs(inches(zeroReturn)) > ZERO_RETURNS_WITHIN,
  );
  const readBack = answers.findLast(
    (each) => wordOf(each) === 'read-back' && setUps.some((setUp) => setUp.id === each.setUpId),
  );
  return [
    ...(returns.length === 0 ? [] : [{ ask: 'zero-return' as const, found: off }]),
    ...(readBack?.found === undefined ? [] : [{ ask: 'read-back' as const, found: readBack.found }]),
  ];
}

function explainedReadings(
  setUp: SetUp,
  setUps: readonly SetUp[],
  readings: readonly Reading[],
  answers: readonly Answer[],
): ExplainedReading[] {
  const first = setUps[0] ?? setUp;
  const places = indicatorPlaces(setUps);
  const passes = new Map<string, number>();
  return readings.flatMap((reading) => {
    const own = setUps.find((each) => each.id === reading.setUpId);
    const of = OF[reading.kind];
    if (own === undefined || of === undefined) return [];
    const pass = (passes.get(of) ?? 0) + 1;
    passes.set(of, pass);
    const elsewhere = own.cylinder !== setUp.cylinder || own.valve !== setUp.valve;
    const place = places.get(own.id) ?? 0;
    return [toExplained(reading, of, { setUp: own, first, place, elsewhere, pass, answers })];
  });
}

/** The inference's input out of the stored readings that stand; undefined until a valve lift was read. */
export function explanationInput(record: BuildRecord, setUpId: string): ExplanationInput | undefined {
  const { answers, arms } = record;
  const setUp = setUpOf(record, setUpId);
  const spec = specAt(record.revisions, setUp.revision);
  const setUps = relevant(setUp, record.setUps);
  const stand = stillStanding(record.readings).filter((reading) =>
    setUps.some((each) => each.id === reading.setUpId),
  );
  if (!stand.some((each) => each.kind === 'valve-lift')) return undefined;
  const { method } = setUps[0] ?? setUp;
  const mark = ratioOfStamp(arms.find((arm) => arm.id === setUp.armId));
  const card = spec.cam?.[setUp.valve]?.lobeLift;
  const other = spec.cam?.[setUp.valve === 'intake' ? 'exhaust' : 'intake']?.lobeLift;
  const setting = method.lashSetting ?? spec.cam?.[setUp.valve]?.lash;
  const asked = askedOf(setUps, stand, answers);
  return {
    nominals: nominalsFor(spec),
    readings: explainedReadings(setUp, setUps, stand, answers).slice(-MOST_READINGS),
    ...(asked.length === 0 ? {} : { answers: asked }),
    ...(mark === undefined ? {} : { mark }),
    ...(card === undefined ? {} : { cardLobeLift: inches(card) * IN }),
    ...(other === undefined ? {} : { otherLobeLift: inches(other) * IN }),
    ...(method.lash === 'not-said' ? {} : { lash: method.lash }),
    ...(setting === undefined || method.lash !== 'set' || inches(setting) <= 0
      ? {}
      : { lashSetting: inches(setting) * IN }),
    ...(method.alignment === 'not-said' ? {} : { alignment: method.alignment }),
  };
}
