import { evidenceOf } from '../../server/assessment/evidence.ts';
import { assess } from '../../server/mechanics/assessment/assess.ts';
import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import type { Evidence } from '../../server/mechanics/assessment/evidence.ts';
import type { Answer } from '../../server/records/answers/answers.ts';
import type { Arm } from '../../server/records/arms/arms.ts';
import { nowOnValves, type Placement } from '../../server/records/arms/placements.ts';
import type { Call } from '../../server/records/calls/calls.ts';
import { defaultOf, LIMIT_NAMES } from '../../server/records/limits/known-limits.ts';
import { lengthOf } from '../../server/records/readings/in-turns.ts';
import type { Reading } from '../../server/records/readings/readings.ts';
import type { SetUp } from '../../server/records/set-ups/set-ups.ts';
import { asItStands, type SetUpFacts, type SetUpStatement } from '../../server/records/set-ups/statements.ts';
import { allAsLengths } from '../../server/records/sheet/said-in-turns.ts';
import type { SheetReading } from '../../server/records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../server/records/whole-build/build-record.ts';
import { type BuildSpec, buildSpec } from '../../shared/schemas/build-spec.ts';
import { answerQuestion, newArm, newReading, placeArm } from '../../shared/schemas/commands.ts';
import type { Goal } from '../../shared/schemas/goals.ts';
import { correctSetUp, newSetUp } from '../../shared/schemas/method.ts';
import { newSheetReadings } from '../../shared/schemas/sheet.ts';
import type { Command } from './commands.ts';
import { idOf } from './ids.ts';

const AT = new Date('2026-03-01T09:00:00Z');
const WHO = { by: 'Robin at the desk', byKind: 'staff', at: AT };
const LIMITS: BuildRecord['limits'] = new Map(LIMIT_NAMES.map((name) => [name, defaultOf(name)]));

interface Started {
  readonly id: string;
  readonly facts: SetUpFacts;
}

/**
 * The record of one call, kept in memory: what is entered is read by the schemas of its routes, and what is known comes
 * from it as the service has it.
 */
export class MemoryBuild {
  /** Everything that was entered, in order: the same call can be entered elsewhere by it. */
  readonly entered: Command[] = [];
  readonly #call: Call;
  readonly #revisions: BuildSpec[] = [{}];
  readonly #arms: Arm[] = [];
  readonly #placements: Placement[] = [];
  readonly #setUps: Started[] = [];
  readonly #statements: SetUpStatement[] = [];
  readonly #readings: Reading[] = [];
  readonly #sheet: SheetReading[] = [];
  readonly #answers: Answer[] = [];
  readonly #events: BuildRecord['events'][number][] = [];
  #seq = 0;

  constructor(goal: Goal = 'verify-ratio') {
    this.#call = {
      id: idOf('call', 1),
      number: 1,
      buildId: idOf('build', 1),
      callerName: 'A caller',
      callerRole: '',
      callBack: '',
      goal,
      engineState: 'apart',
      contact: 'none',
      held: false,
      holdReason: '',
      openedAt: AT,
      closedAt: undefined,
    };
  }

  spec(spec: object): void {
    this.entered.push({ enters: 'spec', body: { spec } });
    this.#revisions.push(buildSpec.parse(spec));
    this.#seq += 1;
    const data = { revision: this.#revisions.length, reason: '' };
    this.#events.push({ seq: this.#seq, kind: 'build-revised', data, ...WHO });
  }

  arm(ratioStamp: string): string {
    const body = { name: `Arm ${this.#arms.length + 1}`, ratioStamp };
    this.entered.push({ enters: 'arm', body });
    const id = idOf('arm', this.#arms.length + 1);
    this.#arms.push({ id, ...newArm.parse(body), by: WHO.by, at: AT });
    this.#seq += 1;
    return id;
  }

  place(armId: string, cylinder: number, valve: 'intake' | 'exhaust' = 'intake'): void {
    const body = { armId, cylinder, valve };
    this.entered.push({ enters: 'place', body });
    this.#seq += 1;
    const id = idOf('placement', this.#placements.length + 1);
    this.#placements.push({ id, ...placeArm.parse(body), seq: this.#seq, by: WHO.by, at: AT });
  }

  setUp(body: object): string {
    this.entered.push({ enters: 'set-up', body });
    const { armId, ...read } = newSetUp.parse(body);
    const facts: SetUpFacts = { ...read, armId };
    const id = idOf('set-up', this.#setUps.length + 1);
    this.#setUps.push({ id, facts });
    this.#seq += 1;
    const { cylinder, valve, method } = facts;
    const { spring, lifter, lash } = method;
    const number = this.#setUps.length;
    const data = { setUpId: id, number, cylinder, valve, spring, lifter, lash };
    this.#events.push({ seq: this.#seq, kind: 'set-up-started', data, ...WHO });
    return id;
  }

  putRight(setUpId: string, said: object): void {
    const body = { ...said, reason: 'told later' };
    this.entered.push({ enters: 'put-right', setUpId, body });
    this.#seq += 1;
    const { reason, ...read } = correctSetUp.parse(body);
    const id = idOf('statement', this.#statements.length + 1);
    this.#statements.push({ id, setUpId, seq: this.#seq, said: read, reason, ...WHO });
  }

  reading(setUpId: string, body: object): string {
    this.entered.push({ enters: 'reading', setUpId, body });
    this.#seq += 1;
    const { kind, counted = false, ...said } = newReading.parse(body);
    const dial = this.#setUps.find((each) => each.id === setUpId)?.facts.method.perTurn;
    const peak = lengthOf('peak', said.peak, dial);
    const zeroReturn = said.zeroReturn && lengthOf('zeroReturn', said.zeroReturn, dial);
    const atLobeLift = said.atLobeLift && lengthOf('atLobeLift', said.atLobeLift, dial);
    const id = idOf('reading', this.#readings.length + 1);
    const before = this.#readings.filter((each) => each.setUpId === setUpId && each.kind === kind);
    const pass = Math.max(0, ...before.map((each) => each.pass)) + 1;
    this.#readings.push({
      id,
      seq: this.#seq,
      ...{ replaces: undefined, replacedBy: undefined, struck: false, reason: '' },
      ...{ setUpId, kind, pass, peak, zeroReturn, atLobeLift, counted },
      ...WHO,
    });
    return id;
  }

  /** Strikes a reading out: a line of its own comes in its place. */
  strike(readingId: string, reason: string): void {
    this.entered.push({ enters: 'strike', readingId, body: { reason } });
    this.#seq += 1;
    const at = this.#readings.findIndex(({ id }) => id === readingId);
    const struck = this.#readings[at];
    if (struck === undefined) throw new Error(`${readingId} is not on record`);
    const id = idOf('reading', this.#readings.length + 1);
    this.#readings[at] = { ...struck, replacedBy: id };
    this.#readings.push({ ...struck, id, seq: this.#seq, replaces: readingId, struck: true, reason });
  }

  answer(body: object): void {
    this.entered.push({ enters: 'answer', body });
    this.#seq += 1;
    const {
      questionId,
      setUpId,
      code = '',
      found,
      value,
      cylinder,
      valve,
      ...read
    } = answerQuestion.parse(body);
    const id = idOf('answer', this.#answers.length + 1);
    const place = cylinder === undefined || valve === undefined ? undefined : { cylinder, valve };
    this.#answers.push({
      id,
      ...read,
      questionId,
      setUpId,
      code,
      found,
      value,
      place,
      seq: this.#seq,
      ...WHO,
    });
  }

  /** Readings of the sheet, all in one way. */
  sheet(body: object): void {
    this.entered.push({ enters: 'sheet', body });
    this.#seq += 1;
    const { spring, lifter, tool, arms, readings } = newSheetReadings.parse(body);
    const sits = nowOnValves(this.#placements);
    for (const { armId, ...reading } of allAsLengths(readings, undefined)) {
      const seat = sits.find((each) => each.cylinder === reading.cylinder && each.valve === reading.valve);
      this.#sheet.push({
        id: idOf('sheet', this.#sheet.length + 1),
        seq: this.#seq,
        ...{ replaces: undefined, replacedBy: undefined, struck: false, reason: '' },
        ...{ ...reading, spring, lifter, tool, arms, armId: armId ?? seat?.armId },
        ...WHO,
      });
    }
  }

  record(): BuildRecord {
    const build = { id: idOf('build', 1), label: 'A simulated call', version: this.#seq };
    const revision = this.#revisions.length;
    const spec = this.#revisions.at(-1) ?? {};
    return {
      build: { ...build, revision, units: 'inch', spec, createdAt: AT },
      calls: [this.#call],
      told: [this.#call],
      revisions: this.#revisions.map((each, at) => ({
        revision: at + 1,
        spec: each,
        reason: '',
        by: WHO.by,
        at: AT,
      })),
      arms: this.#arms,
      placements: this.#placements,
      setUps: this.#setUps.map((each, index) => this.#shown(each, index + 1)),
      readings: this.#readings,
      answers: this.#answers,
      sheetReadings: this.#sheet,
      ...{ handParts: [], partReadings: [], tipMarks: [], lashLines: [], gapScans: [] },
      ...{ workings: [], photographs: [], notes: [], shareLinks: [] },
      events: this.#events,
      limits: LIMITS,
      catalogueRatios: [],
      catalogue: [],
    };
  }

  #shown({ id, facts }: Started, number: number): SetUp {
    const statements = this.#statements.filter(({ setUpId }) => setUpId === id);
    const about = { id, buildId: idOf('build', 1), number, revision: 1, by: WHO.by, at: AT };
    return { ...about, ...asItStands(facts, statements), started: facts, struck: false, statements };
  }

  evidence(): Evidence {
    return evidenceOf(this.record(), this.#call);
  }

  assess(): Assessment {
    return assess(this.evidence());
  }
}
