import { z } from 'zod';
import { choice, listOf } from '../../../shared/schemas/fields.ts';
import { bare, bareList, ratio } from '../../../shared/schemas/number-fields.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { IN } from '../kit/si.ts';
import { type AssumptionName, DEFAULT_ASSUMPTIONS } from './assumptions.ts';
import { HIGHEST_RATIO, MOST_NAMES, MOST_PASSES, MOST_READINGS, MOST_SET_UPS } from './limits.ts';
import type { ExplainInput, ExplainReading } from './types.ts';

/** Assumptions that are lengths; the others are chances, shares, ratios, minutes and bits. */
const LENGTHS: ReadonlySet<string> = new Set<AssumptionName>([
  'readingSpread',
  'readingHalfWidth',
  'dialHalfWidth',
  'lashResetSpread',
  'cardHalfWidth',
  'lobeMean',
  'lobeSpread',
  'ordinaryLashSpread',
  'flexMean',
  'flexSpread',
  'sinkMean',
  'sinkSpread',
  'sinkPerPassMean',
  'sinkPerPassSpread',
  'lashMean',
  'lashSpread',
  'lashSettingSpread',
  'zeroMovedSpread',
  'lobesDiffer',
  'cardNotThisLobeSpread',
  'unlistedFaultMean',
  'unlistedFaultSpread',
  'passesScatterSpread',
  'station',
  'sinkingPerPass',
]);

function isAssumption(name: string): name is AssumptionName {
  return Object.hasOwn(DEFAULT_ASSUMPTIONS, name);
}

const assumption = (name: string) =>
  LENGTHS.has(name)
    ? length(`assumption ${name}`, { sign: 'any' }).optional()
    : bare(`assumption ${name}`, { beyond: 1e6 }).optional();

const assumptions = z
  .strictObject(Object.fromEntries(Object.keys(DEFAULT_ASSUMPTIONS).map((name) => [name, assumption(name)])))
  .meta({ description: 'changes to the judged chances and spreads; what is left out keeps its default' });

const reading = z.strictObject({
  of: choice(['valve-lift', 'lobe-lift'], 'what was read'),
  value: length('the reading as it was entered', { sign: 'any' }),
  pass: bare('which pass of this kind it was, from 1; left out, counted in order', {
    least: 1,
    most: MOST_PASSES,
    whole: true,
  }).optional(),
  spring: choice(['light', 'running'], 'spring on the valve; left out, it is asked for').optional(),
  lifter: choice(['solid', 'hydraulic'], 'lifter; left out, it is asked for').optional(),
  setUp: bare('one higher each time the indicator was set up again; left out, 0', {
    least: 0,
    most: MOST_SET_UPS,
    whole: true,
  }).optional(),
  atLobeLift: length('lobe lift at which it was read, instead of full lift').optional(),
  lashSet: z.boolean().optional().meta({ description: 'the lash was taken out for this reading' }),
  aligned: z.boolean().optional().meta({ description: 'the plunger was made parallel for this reading' }),
  counted: z
    .boolean()
    .optional()
    .meta({ description: 'small hand and direction were read for this reading' }),
  otherValve: z.boolean().optional().meta({ description: 'the same arm on another valve' }),
  perTurn: length('travel of the big hand per turn; left out, .1 in').optional(),
  errorLimit: length('how far off its tool may be, half-width; left out, as a dial', {
    sign: 'not-negative',
  }).optional(),
  method: choice(['lifter', 'caliper'], 'how a lobe was measured').optional(),
});

export const explainInput = z.strictObject({
  nominals: bareList('nominal ratios the arm may have', {
    above: 0,
    beyond: HIGHEST_RATIO,
    fewest: 1,
    longest: MOST_NAMES,
  }),
  mark: ratio('ratio stamped on the arm').optional(),
  cardLobeLift: length('lobe lift of this lobe on the card').optional(),
  otherLobeLift: length('lobe lift of the other lobe on the card').optional(),
  lash: choice(['zero', 'set'], 'lash while reading').optional(),
  lashSetting: length('the lash it was set to').optional(),
  alignment: choice(['parallel', 'leaning'], 'how the plunger stands').optional(),
  readings: listOf(reading, 'readings in the order taken, without those struck out', 1, MOST_READINGS),
  answers: listOf(
    z.strictObject({
      ask: choice(['read-back', 'zero-return'], 'which question was asked'),
      found: z.boolean().meta({ description: 'something was found wrong' }),
    }),
    'answers to questions',
    0,
    40,
  ).optional(),
  assumptions: assumptions.optional(),
});

type JsonInput = z.output<typeof explainInput>;
type JsonReading = JsonInput['readings'][number];

const inch = (si: number | undefined): number | undefined => (si === undefined ? undefined : si / IN);

function toReading(one: JsonReading, index: number, all: readonly JsonReading[]): ExplainReading {
  const {
    value,
    atLobeLift,
    perTurn,
    pass,
    setUp,
    spring,
    lifter,
    lashSet,
    aligned,
    counted,
    otherValve,
    method,
    errorLimit,
  } = one;
  const at = inch(atLobeLift);
  const turn = inch(perTurn);
  return {
    of: one.of,
    value: value / IN,
    pass: pass ?? all.slice(0, index + 1).filter((each) => each.of === one.of).length,
    setUp: setUp ?? 0,
    ...(spring === undefined ? {} : { spring }),
    ...(lifter === undefined ? {} : { lifter }),
    ...(at === undefined ? {} : { atLobeLift: at }),
    ...(lashSet === undefined ? {} : { lashSet }),
    ...(aligned === undefined ? {} : { aligned }),
    ...(counted === undefined ? {} : { counted }),
    ...(otherValve === undefined ? {} : { otherValve }),
    ...(turn === undefined ? {} : { perTurn: turn }),
    ...(method === undefined ? {} : { method }),
    ...(errorLimit === undefined ? {} : { errorLimit: errorLimit / IN }),
  };
}

function toChanges(given: JsonInput['assumptions']): Partial<Record<AssumptionName, number>> {
  const changes: Partial<Record<AssumptionName, number>> = {};
  for (const [name, value] of Object.entries(given ?? {})) {
    if (isAssumption(name) && value !== undefined) changes[name] = LENGTHS.has(name) ? value / IN : value;
  }
  return changes;
}

/** The input of the inference, which works in inches, out of the request's in SI. */
export function toExplainInput(given: JsonInput): ExplainInput {
  const { nominals, mark, lash, alignment, answers, assumptions: changes } = given;
  const card = inch(given.cardLobeLift);
  const other = inch(given.otherLobeLift);
  const setting = inch(given.lashSetting);
  return {
    nominals,
    readings: given.readings.map(toReading),
    ...(mark === undefined ? {} : { mark }),
    ...(card === undefined ? {} : { cardLobeLift: card }),
    ...(other === undefined ? {} : { otherLobeLift: other }),
    ...(lash === undefined ? {} : { lash }),
    ...(setting === undefined ? {} : { lashSetting: setting }),
    ...(alignment === undefined ? {} : { alignment }),
    ...(answers === undefined ? {} : { answers }),
    ...(changes === undefined ? {} : { assumptions: toChanges(changes) }),
  };
}
