import type { Action, ExplainReading } from '../../server/mechanics/explain-readings/types.ts';
import { askFor, HEARD, readBackFinds } from '../mechanics/explain-readings/follow.ts';
import type { Chance } from '../mechanics/explain-readings/random.ts';
import {
  type Asked,
  lobeNear,
  type TrueCall,
  takeReading,
} from '../mechanics/explain-readings/simulated-call.ts';
import { MemoryBuild } from './memory-build.ts';
import { firstState, inch, methodAtFirst, type State, type Telling } from './states.ts';

/** Travel of the big hand per turn, inches. */
const PER_TURN = 0.1;
const ENGINE = { engine: { cylinders: 8 } };
/** The swap test puts the arm on this cylinder. */
export const ELSEWHERE = 3;

/** `5 turns 57`: the small hand first, then the number under the big hand. */
export function onDial(value: number): object {
  const thousandths = Math.round(value * 1000);
  const turns = Math.floor(thousandths / 100);
  const typed = `${turns} turns ${thousandths - 100 * turns}`;
  return { typed, assume: 'in', perTurn: { value: PER_TURN, unit: 'in' } };
}

export interface SetUpEntered {
  readonly id: string;
  readonly state: State;
}

interface How {
  readonly telling?: Telling;
  /** The caller says how much lash was left in, where it was. */
  readonly tellsSetting?: boolean;
}

/**
 * A simulated call as the desk enters it: a set-up for each state that it is read in, passes off the dial in turns and
 * needle, lobes at the lifter, stations, answers and strikes.
 */
export class RecordedCall {
  readonly build = new MemoryBuild();
  call: TrueCall;
  readonly telling: Telling;
  readonly setUps: SetUpEntered[] = [];
  /** Every reading with what is known of it, as the computation alone would be told. */
  readonly taken: ExplainReading[] = [];
  readonly #chance: Chance;
  #armId: string | undefined;

  constructor(chance: Chance, call: TrueCall, { telling = 'at-once', tellsSetting = false }: How = {}) {
    this.#chance = chance;
    this.call = call;
    this.telling = telling;
    const late = telling === 'late' || telling === 'by-answers';
    this.build.spec(late ? ENGINE : this.#spec(telling === 'wrong-first'));
    if (!late) this.nameArm();
    this.#start(firstState(call, tellsSetting));
  }

  /** With the card; its rows the wrong way round, if so said. */
  #spec(rowsSwapped = false): object {
    const { cardLobeLift: own = 0, otherLobeLift: other = 0 } = this.call.said;
    const [intake, exhaust] = rowsSwapped ? [other, own] : [own, other];
    const lobes = { intake: { lobeLift: inch(intake) }, exhaust: { lobeLift: inch(exhaust) } };
    return { ...ENGINE, cam: { assumedRatio: 1.6, ...lobes } };
  }

  nameArm(): string {
    const { mark } = this.call.said;
    const id = this.build.arm(mark === undefined ? '' : String(mark));
    this.build.place(id, 1);
    this.#armId = id;
    return id;
  }

  tellCard(): void {
    this.build.spec(this.#spec());
  }

  /** Its row is found to be another one: that of the lobe under the valve. */
  cardPutRight(): void {
    const { otherLobeLift = 0 } = this.call.said;
    const intake = { lobeLift: inch(this.call.valveLobe) };
    this.build.spec({
      ...ENGINE,
      cam: { assumedRatio: 1.6, intake, exhaust: { lobeLift: inch(otherLobeLift) } },
    });
  }

  /** What was heard to be wrong is put right: each of these is the lobe that the card is taken to give. */
  entriesPutRight(): void {
    const mistakes = new Set([...this.call.mistakes].filter((cause) => !HEARD.includes(cause)));
    this.call = { ...this.call, mistakes, cardSlipped: false };
    this.cardPutRight();
  }

  withoutCard(): void {
    this.build.spec({ ...ENGINE, cam: { assumedRatio: 1.6 } });
  }

  #start(state: State): SetUpEntered {
    const id = this.build.setUp({
      cylinder: state.cylinder,
      valve: 'intake',
      method: methodAtFirst(state, this.telling),
      ...(this.#armId === undefined ? {} : { armId: this.#armId }),
    });
    const started = { id, state };
    this.setUps.push(started);
    return started;
  }

  get newest(): SetUpEntered {
    const newest = this.setUps.at(-1);
    if (newest === undefined) throw new Error('nothing is set up yet');
    return newest;
  }

  /** The set-up that a reading is entered in: one of its own where it is read in another way, or the dial put up again. */
  #setUpFor(reading: ExplainReading): SetUpEntered {
    const { id, state } = this.newest;
    const before = this.taken.findLast(({ of }) => of === 'valve-lift');
    const anew = before !== undefined && before.setUp !== reading.setUp;
    const { lashSetting: _, ...kept } = state;
    const changed = reading.lashSet === true && state.lash !== 'zero';
    const next: State = {
      ...(changed ? { ...kept, lash: 'zero' } : state),
      cylinder: reading.otherValve ? ELSEWHERE : 1,
      spring: reading.spring ?? 'running',
      lifter: reading.lifter ?? 'hydraulic',
      ...(reading.aligned ? { alignment: 'parallel' } : {}),
    };
    return !anew && JSON.stringify(next) === JSON.stringify(state) ? { id, state } : this.#start(next);
  }

  /** The lobe under the valve that the arm is moved to is one lobe, however often it is read there. */
  #elsewhere(): number {
    const lobe = this.call.lobeElsewhere ?? lobeNear(this.#chance, this.call.valveLobe);
    this.call = { ...this.call, lobeElsewhere: lobe };
    return lobe;
  }

  /** The lobe at the valve that the arm was moved to. */
  takeLobeElsewhere(): void {
    const call = { ...this.call, ownLobe: this.#elsewhere() };
    const { value } = takeReading(this.#chance, call, askFor('lobe-at-lifter', this.taken, call), this.taken);
    this.build.reading(this.newest.id, { kind: 'lobe-lift', peak: onDial(value) });
  }

  /** Takes a reading and enters it. A lobe is read on the valve that was read first. */
  take(ask: Asked): void {
    if (ask.otherValve === true) this.#elsewhere();
    const reading = takeReading(this.#chance, this.call, ask, this.taken);
    const peak = onDial(reading.value);
    if (reading.of === 'lobe-lift') {
      this.taken.push(reading);
      const own = this.setUps.findLast(({ state }) => state.cylinder === 1) ?? this.newest;
      this.build.reading(own.id, { kind: 'lobe-lift', peak });
      return;
    }
    const at = reading.atLobeLift;
    const { id } = this.#setUpFor(reading);
    this.taken.push(reading);
    this.build.reading(id, {
      peak,
      ...(reading.counted ? { counted: true } : {}),
      ...(at === undefined ? { kind: 'valve-lift' } : { kind: 'valve-lift-at', atLobeLift: inch(at) }),
    });
  }

  /** Does what is asked for next. */
  act(action: Action): void {
    if (action === 'read-back') this.#readBack();
    else this.take(askFor(action, this.taken, this.call));
  }

  #readBack(): void {
    const found = readBackFinds(this.#chance, this.call);
    this.build.answer({
      question: 'Are the entries as they were read?',
      code: 'read-back',
      setUpId: this.newest.id,
      answer: found ? 'one was wrong' : 'all as they were read',
      found,
    });
  }
}
