import type {
  Bounds,
  Evidence,
  EvidenceEntry,
  LobeCard,
  ScanEvidence,
  SetUpEvidence,
  SetUpStatementEvidence,
  TakenOnEngine,
} from '../../server/mechanics/assessment/evidence.ts';
import type { FamilyEvidence } from '../../server/mechanics/assessment/part/family.ts';
import type { Call } from '../../server/records/calls/calls.ts';
import type { PartFamily } from '../../server/records/catalogue/families.ts';
import type { Entry } from '../../server/records/corrections/entries.ts';
import type { GapScan } from '../../server/records/gap-scans/gap-scan-table.ts';
import { defaultOf, LIMIT_NAMES } from '../../server/records/limits/known-limits.ts';
import type { SetUp } from '../../server/records/set-ups/set-ups.ts';
import { asItStands, type SetUpFacts, type SetUpStatement } from '../../server/records/set-ups/statements.ts';
import type { SheetReading } from '../../server/records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../server/records/whole-build/build-record.ts';
import { defined } from '../../shared/defined.ts';
import { formatQuantity } from '../../shared/quantities/format.ts';
import { UNITS, type Unit } from '../../shared/quantities/units.ts';
import type { BuildSpec, Lobe } from '../../shared/schemas/build-spec.ts';
import type { Entered } from '../../shared/schemas/entered.ts';
import type { Gauged } from '../../shared/schemas/gauged.ts';
import { PART_KINDS, PART_SIZES } from '../../shared/schemas/part-words.ts';
import { TOOLS } from '../../shared/schemas/sheet.ts';
import { keysOf } from '../../shared/schemas/words.ts';

/*
 * A stored record that says what this evidence says, made without a database: generated builds can be shown on
 * every page by it. The way back, from the record to the evidence, is the service's own.
 */

const CALL = '0197d3a0-0000-7000-8000-000000000001';
const AT = new Date('2026-03-01T09:00:00Z');
const WHO = { by: 'Robin at the desk', byKind: 'staff', at: AT };

const typed = (si: number, unit: Unit): Entered => {
  const value = si / UNITS[unit].toSi;
  const readAs = formatQuantity({ value, unit });
  return { typed: readAs, value, unit, readAs };
};
const inches = (si: number) => typed(si, 'in');
const ifKnown = (si: number | undefined, unit: Unit = 'in') =>
  si === undefined ? undefined : typed(si, unit);

const entry = ({ id, line, standing }: EvidenceEntry): Entry => ({
  id,
  seq: line,
  replaces: undefined,
  replacedBy: standing ? undefined : 'later',
  struck: false,
  reason: '',
  ...WHO,
});

const gauged = ({ value, low, high }: Bounds, readAs: string): Gauged => {
  const part = (si: number | undefined) => (si === undefined ? undefined : si / UNITS.in.toSi);
  return {
    typed: readAs,
    readAs,
    unit: 'in',
    ...defined({ value: part(value), low: part(low), high: part(high) }),
  };
};

/** Parts that are not there are left out, as JSON of the record has them. */
function without<T extends object>(parts: T): T {
  for (const key of Object.keys(parts))
    if (Reflect.get(parts, key) === undefined) Reflect.deleteProperty(parts, key);
  return parts;
}

const lobe = (card: LobeCard): Lobe =>
  without({
    lobeLift: ifKnown(card.lobeLift),
    cardValveLift: ifKnown(card.valveLift),
    centreline: ifKnown(card.centreline, 'deg'),
    lash: ifKnown(card.lash),
    durations: card.durations?.map(({ atLift, duration }) => ({
      atLift: inches(atLift),
      duration: typed(duration, 'deg'),
    })),
  });

const taken = (given: TakenOnEngine) =>
  without({
    closedGapAtTdc: ifKnown(given.closedGapAtTdc),
    pistonFloor: given.pistonFloor,
    lobeLiftAtClosest: ifKnown(given.lobeLiftAtClosest),
    pushrodToHead: ifKnown(given.pushrodToHead),
  });

function specOf({ engine, card, springs, rockers, taken: gaps }: Evidence): BuildSpec {
  return {
    engine: without({
      cylinders: engine.cylinders,
      firingOrder: engine.firingOrder,
      bankOrder: engine.bankOrder,
      stroke: ifKnown(engine.stroke),
      rodLength: ifKnown(engine.rodLength),
      pinOffset: ifKnown(engine.pinOffset),
      valveAngle: ifKnown(engine.valveAngle, 'deg'),
      lifter: engine.lifter,
      rockerMounting: engine.mounting,
      coverBolting: engine.coverBolting,
      use: engine.use,
      rodMaterial: engine.rodMaterial,
      studSize: engine.studSize,
    }),
    cam: without({ assumedRatio: card.assumedRatio, intake: lobe(card.intake), exhaust: lobe(card.exhaust) }),
    springs: without({
      installedHeight: ifKnown(springs.installedHeight),
      seatLoad: ifKnown(springs.seatLoad, 'lbf'),
      rate: ifKnown(springs.rate, 'lbf/in'),
      solidHeight: ifKnown(springs.solidHeight),
      retainerToSeal: ifKnown(springs.retainerToSeal),
    }),
    rockers: without({
      nominalRatio: rockers.soldAs,
      plannedRatio: rockers.planned,
      alsoPlanned: rockers.alsoPlanned === undefined ? undefined : [...rockers.alsoPlanned],
      family: rockers.family?.name,
      pivotToTip: ifKnown(rockers.pivotToTip),
    }),
    clearances: { intake: taken(gaps.intake), exhaust: taken(gaps.exhaust) },
  };
}

const factsOf = (set: SetUpEvidence): SetUpFacts => ({
  cylinder: set.cylinder,
  valve: set.valve,
  armId: set.armId,
  method: without({
    spring: set.spring,
    lifter: set.lifter,
    lash: set.lash,
    lashSetting: ifKnown(set.lashSetting),
    restsOn: set.restsOn,
    alignment: set.alignment,
    graduation: inches(set.graduation),
    perTurn: inches(set.perTurn),
    travel: ifKnown(set.travel),
    pushedIn: ifKnown(set.pushedIn),
    errorLimit: inches(set.errorLimit),
    lobeSource: set.lobeSource,
    lobeErrorLimit: inches(set.lobeErrorLimit),
  }),
});

const statementOf = ({ id, line, setUpId, says, notKnown }: SetUpStatementEvidence): SetUpStatement => {
  const { cylinder, valve, armId, spring, lifter, lash, restsOn, alignment, lobeSource } = says;
  return {
    id,
    setUpId,
    seq: line,
    said: defined({
      cylinder,
      valve,
      armId,
      method: defined({
        ...{ spring, lifter, lash, restsOn, alignment, lobeSource },
        lashSetting: ifKnown(says.lashSetting),
        graduation: ifKnown(says.graduation),
        perTurn: ifKnown(says.perTurn),
        travel: ifKnown(says.travel),
        pushedIn: ifKnown(says.pushedIn),
        errorLimit: ifKnown(says.errorLimit),
        lobeErrorLimit: ifKnown(says.lobeErrorLimit),
      }),
      notKnown: [...notKnown],
    }),
    reason: 'told later',
    ...WHO,
  };
};

function setUpOf(set: SetUpEvidence, all: readonly SetUpStatementEvidence[]): SetUp {
  const started = factsOf(set);
  const own = all.filter(({ setUpId }) => setUpId === set.id).toSorted((a, b) => a.line - b.line);
  const statements = own.map(statementOf);
  return {
    id: set.id,
    buildId: 'build',
    number: set.number,
    revision: 1,
    ...asItStands(started, statements),
    started,
    statements,
    by: WHO.by,
    at: AT,
  };
}

const sheetReadings = ({ sheet }: Evidence): SheetReading[] =>
  sheet.map(({ cylinder, valve, kind, reading, readAs, tool, spring, lifter, arms, armId, ...rest }) => ({
    ...entry(rest),
    cylinder,
    valve,
    kind,
    reading: gauged(reading, readAs),
    tool: keysOf(TOOLS).find((each) => each === tool) ?? 'not-said',
    spring,
    lifter,
    arms,
    armId,
  }));

export function callOf({ call }: Evidence): Call {
  return {
    id: CALL,
    number: 1,
    buildId: 'build',
    callerName: 'Lin',
    callerRole: 'engine-builder',
    callBack: '',
    goal: call.goal,
    engineState: call.engineState,
    contact: call.contact,
    held: call.hold !== undefined,
    holdReason: call.hold?.reason ?? '',
    openedAt: AT,
    closedAt: call.closed ? AT : undefined,
  };
}

/** What was lifted stands in the log. */
const events = ({ call }: Evidence): BuildRecord['events'] =>
  (call.stopsLifted ?? []).length === 0
    ? []
    : [
        {
          seq: 1_000,
          kind: 'hold-lifted',
          data: { callId: CALL, reason: 'looked at by a shop', was: '', stops: call.stopsLifted },
          ...WHO,
        },
      ];

const lashLines = ({ lash }: Evidence): BuildRecord['lashLines'] =>
  lash.map(({ cylinder, valve, gap, readAs, moment, engine, nut, day, ...rest }) => ({
    reading: {
      ...entry(rest),
      cylinder,
      valve,
      kind: 'lash' as const,
      reading: gauged(gap, readAs),
      tool: 'feeler' as const,
      spring: 'not-said' as const,
      lifter: 'not-said' as const,
      arms: 'these' as const,
      armId: undefined,
    },
    engine,
    moment,
    nut,
    on: day,
    doneBy: 'Robin',
  }));

function family({ sizes, nominalRatio, ...rest }: FamilyEvidence): PartFamily {
  const inchesOf: Partial<Record<keyof typeof PART_SIZES, number>> = {};
  for (const kind of keysOf(PART_SIZES)) {
    const size = sizes[kind];
    if (size !== undefined) inchesOf[kind] = size / UNITS.in.toSi;
  }
  return { ...rest, nominalRatio, sizes: inchesOf, notes: '', by: WHO.by, changedAt: AT };
}

function scanOf(scan: ScanEvidence): GapScan {
  const { cylinder, valve, readAs, spring, lifter, lash, lashSetting, arms, armId } = scan;
  return {
    ...entry(scan),
    cylinder,
    valve,
    readings: scan.points.map(({ crankAngle, gap, readAs: read }) => ({
      crankAngle: typed(crankAngle, 'deg'),
      gap: gauged(gap, read),
    })),
    readAs,
    tool: keysOf(TOOLS).find((each) => each === scan.tool) ?? 'not-said',
    spring,
    lifter,
    lash,
    lashSetting: ifKnown(lashSetting),
    arms,
    armId,
  };
}

export function recordOf(evidence: Evidence): BuildRecord {
  const spec = specOf(evidence);
  return {
    build: {
      id: 'build',
      label: 'Generated build',
      revision: 1,
      version: 1_000,
      units: evidence.call.units ?? 'inch',
      spec,
      createdAt: AT,
    },
    calls: [callOf(evidence)],
    told: [callOf(evidence)],
    revisions: [{ revision: 1, spec, reason: 'as told', by: WHO.by, at: AT }],
    arms: evidence.arms.map((arm) => ({ ...arm, family: '', by: WHO.by, at: AT })),
    placements: evidence.seats.map((seat, index) => ({
      ...seat,
      id: `seat-${index}`,
      reason: 'as told',
      seq: index + 1,
      by: WHO.by,
      at: AT,
    })),
    setUps: evidence.setUps.map((setUp) => setUpOf(setUp, evidence.statements)),
    readings: evidence.passes.map((pass) => ({
      ...entry(pass),
      setUpId: pass.setUpId,
      kind: pass.kind,
      pass: pass.pass,
      peak: { ...inches(pass.value), readAs: pass.readAs },
      zeroReturn: ifKnown(pass.zeroReturn),
      atLobeLift: ifKnown(pass.atLobeLift),
      counted: pass.counted,
    })),
    sheetReadings: sheetReadings(evidence),
    gapScans: (evidence.scans ?? []).map(scanOf),
    handParts: (evidence.handParts ?? []).map(({ id, name, armId }, index) => ({
      id,
      name,
      armId,
      seq: index + 1,
      by: WHO.by,
      at: AT,
    })),
    partReadings: evidence.part.map(({ kind, size, word, typed: text, readAs, ...rest }) => ({
      ...entry(rest),
      partId: rest.partId,
      tool: rest.tool ?? ('not-said' as const),
      within: ifKnown(rest.typedWithin),
      count: rest.count,
      how: '',
      kind: keysOf(PART_KINDS).find((each) => each === kind) ?? 'other-number',
      typed: text,
      size: size === undefined ? undefined : typed(size, rest.unit === 'mm' ? 'mm' : 'in'),
      word,
      readAs,
      place: '',
    })),
    tipMarks: evidence.tipMarks.map(
      ({ width, off, pushrod, pushrodOver, shims, stem, cylinder, valve, side, readAs, ...rest }) => ({
        ...entry(rest),
        cylinder,
        valve,
        side,
        readAs,
        width: inches(width),
        off: ifKnown(off),
        pushrod: ifKnown(pushrod),
        pushrodOver: pushrodOver ?? ('not-said' as const),
        shims: ifKnown(shims),
        stem: ifKnown(stem),
        spring: 'light' as const,
        found: 'fresh-ink' as const,
        armId: undefined,
      }),
    ),
    lashLines: lashLines(evidence),
    answers: evidence.answers.map(
      ({ id, line, questionId, code, question, answer, found, value, setUpId }) => ({
        id,
        questionId,
        question,
        answer,
        code,
        found,
        value: ifKnown(value),
        setUpId,
        seq: line,
        by: WHO.by,
        at: AT,
      }),
    ),
    workings: [],
    photographs: [],
    notes: [],
    shareLinks: [],
    events: events(evidence),
    limits: new Map(LIMIT_NAMES.map((name) => [name, defaultOf(name)])),
    catalogueRatios: evidence.catalogueRatios,
    catalogue: (evidence.families ?? []).map(family),
  };
}
