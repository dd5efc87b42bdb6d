import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { MOST_READINGS } from '../../../explain-readings/limits.ts';
import type { Action, Cause, ExplainInput, ExplainReading } from '../../../explain-readings/types.ts';
import { isDial, isLobeTool } from '../../../kit/lift-tools.ts';
import { IN } from '../../../kit/si.ts';
import type { Evidence, PassEvidence } from '../../evidence.ts';
import { indicatorPlaces } from '../read/indicator-places.ts';
import type { SetUpRead } from '../read/set-up-read.ts';
import { zeroLeft } from '../read/zero.ts';
import { askedOf } from './explain-answers.ts';
import { type StateGiven, stateOf } from './explain-state.ts';
import type { Group } from './groups.ts';
import type { SetUpKnown } from './known.ts';
import { passNumbers } from './pass-numbers.ts';

/** One reading of the inference with the entry it is. */
interface ReadingGiven {
  readonly reading: ExplainReading;
  readonly entryId: string;
}

export interface ExplainGiven {
  readonly input: ExplainInput;
  readonly entryIds: readonly string[];
}

/** What a group knows beside its readings. */
interface GroupKnown {
  readonly setUps: readonly SetUpKnown[];
  readonly nominals: readonly number[];
  readonly mark?: number;
  readonly counted: ReadonlySet<string>;
}

interface Taken {
  readonly own: SetUpRead;
  readonly pass: PassEvidence;
  readonly of: ExplainReading['of'];
  readonly otherValve: boolean;
}

const isStation = ({ kind }: PassEvidence): boolean => kind === 'valve-lift-at';

/** The readings of one set-up that speak of the arm: those in its figures, and lifts part of the way up. */
function valveReadings(own: SetUpRead, otherValve: boolean): Taken[] {
  const stations = own.standing.filter((pass) => isStation(pass) && pass.atLobeLift !== undefined);
  return [...own.valve.used, ...stations]
    .filter(({ value }) => value > 0)
    .map((pass) => ({ own, pass, of: 'valve-lift', otherValve }));
}

/** A lobe is the valve's own: passes of it in another set-up of the valve serve, those of another valve do not. */
const lobeReadings = (own: SetUpRead): Taken[] =>
  own.lobe.from === undefined && own.lobe.source !== 'card'
    ? own.lobe.passes.used.map((pass) => ({ own, pass, of: 'lobe-lift', otherValve: false }))
    : [];

/** Set-ups by their number, in each the lobe before the valve: canonical, whatever the order of entry. */
function takenOf(group: Group): Taken[] {
  const sets = [
    ...group.own.map((own) => ({
      own,
      taken: [...lobeReadings(own), ...(group.poor.includes(own) ? [] : valveReadings(own, false))],
    })),
    ...group.sameLobe.map((own) => ({ own, taken: lobeReadings(own) })),
    ...group.elsewhere.map((own) => ({ own, taken: valveReadings(own, true) })),
  ];
  return sets.sort((a, b) => a.own.setUp.number - b.own.setUp.number).flatMap(({ taken }) => taken);
}

/** Of more than the inference takes, the last passes of each kind in each set-up, the newest set-ups first. */
function atMost(taken: readonly Taken[]): readonly Taken[] {
  if (taken.length <= MOST_READINGS) return taken;
  const kindOf = ({ own, pass }: Taken) => `${own.setUp.id} ${pass.kind}`;
  const fromEnd = taken.map(
    (each, index) => taken.slice(index + 1).filter((later) => kindOf(later) === kindOf(each)).length,
  );
  const ranked = taken
    .map((_, index) => index)
    .sort((a, b) => (fromEnd[a] ?? 0) - (fromEnd[b] ?? 0) || b - a)
    .slice(0, MOST_READINGS);
  const kept = new Set(ranked);
  return taken.filter((_, index) => kept.has(index));
}

function toReading(
  each: Taken,
  number: number,
  place: number,
  state: StateGiven,
  counted: boolean,
): ExplainReading {
  const { own, pass, of, otherValve } = each;
  const { spring, lifter, perTurn, lobeSource } = own.setUp;
  const common = {
    of,
    value: pass.value / IN,
    pass: number,
    setUp: place,
    ...(spring === 'not-said' ? {} : { spring }),
    ...(lifter === 'not-said'
      ? {}
      : { lifter: lifter === 'hydraulic' ? ('hydraulic' as const) : ('solid' as const) }),
  };
  const zero = zeroLeft(of === 'lobe-lift' ? own.lobe.passes.used : own.valve.used);
  const within = (limit: number) => ({ errorLimit: (limit + zero) / IN });
  if (of === 'lobe-lift')
    return {
      ...common,
      ...(lobeSource === 'caliper' ? { method: 'caliper' as const } : {}),
      ...(isLobeTool(lobeSource) || zero > 0 ? within(own.setUp.lobeErrorLimit) : {}),
    };
  return {
    ...common,
    perTurn: perTurn / IN,
    ...(isDial(own.setUp.tool) && zero === 0 ? {} : within(own.setUp.errorLimit)),
    ...(pass.atLobeLift === undefined ? {} : { atLobeLift: pass.atLobeLift / IN }),
    ...(state.lashSet(own.setUp) ? { lashSet: true } : {}),
    ...(state.aligned(own.setUp) ? { aligned: true } : {}),
    ...(counted ? { counted: true } : {}),
    ...(otherValve ? { otherValve: true } : {}),
  };
}

function readingsOf(evidence: Evidence, group: Group, known: GroupKnown, state: StateGiven): ReadingGiven[] {
  const taken = atMost(takenOf(group));
  const places = indicatorPlaces(taken.map(({ own }) => own.setUp));
  const numberOf = passNumbers(evidence, group);
  return taken.map((each) => {
    const number = numberOf(each.pass);
    const counted = known.counted.has(each.pass.id);
    const reading = toReading(each, number, places.get(each.own.setUp.id) ?? 0, state, counted);
    return { reading, entryId: each.pass.id };
  });
}

/** Readings that only a dial can give. */
const WITH_A_DIAL: readonly Action[] = ['one-more-pass', 'align-plunger', 'valve-lift-at-.200'];

/** What the record says was taken that way already, so that it is not the next reading. */
function done(group: Group): Action[] {
  const lifts = group.own.filter(({ valve }) => valve.used.length > 0).map(({ setUp }) => setUp);
  return [
    ...(lifts.some(({ lash }) => lash === 'zero') ? ['lash-to-zero' as const] : []),
    ...(lifts.some(({ alignment }) => alignment === 'parallel') ? ['align-plunger' as const] : []),
    ...(lifts.length > 0 && lifts.every(({ tool }) => !isDial(tool)) ? WITH_A_DIAL : []),
    ...(group.readElsewhere ? ['rocker-on-another-valve' as const] : []),
  ];
}

/** A lean may have any size and so fits any reading: said to be parallel, it is not brought up again. */
function denied({ own, elsewhere }: Group): Cause[] {
  const lifted = [...own, ...elsewhere].filter(({ valve }) => valve.used.length > 0);
  return lifted.every(({ setUp }) => setUp.alignment === 'parallel') ? ['plunger-tilted'] : [];
}

const inch = (si: number | undefined): number | undefined =>
  si === undefined || si <= 0 ? undefined : si / IN;

/** The inference's input for one arm on one valve; undefined until a lift was read. */
export function explainInput(evidence: Evidence, group: Group, known: GroupKnown): ExplainGiven | undefined {
  const state = stateOf(evidence, group);
  const readings = readingsOf(evidence, group, known, state);
  if (!group.own.some(({ valve }) => valve.used.length > 0)) return undefined;
  const card = inch(evidence.card[sideOfValve(group.valve)].lobeLift);
  const other = inch(evidence.card[sideOfValve(group.valve) === 'intake' ? 'exhaust' : 'intake'].lobeLift);
  const answers = askedOf(group, known.setUps);
  return {
    entryIds: readings.map(({ entryId }) => entryId),
    input: {
      nominals: known.nominals,
      readings: readings.map(({ reading }) => reading),
      notOffered: done(group),
      denied: denied(group),
      ...(answers.length === 0 ? {} : { answers }),
      ...defined({ mark: known.mark, cardLobeLift: card, otherLobeLift: other, lash: state.lash }),
      ...(state.lashSetting === undefined ? {} : { lashSetting: state.lashSetting / IN }),
      ...defined({ alignment: state.alignment }),
    },
  };
}
