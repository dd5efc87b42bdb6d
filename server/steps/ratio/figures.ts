import { formatFigure, formatNumber, formatRatioInterval } from '../../../shared/quantities/format.ts';
import { toldIn } from '../../../shared/quantities/spoken-units.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import type { ResultData, ScaleData } from '../../../views/parts/result.examples.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { ratioFigure, ratioName } from '../../call/ratio-text.ts';
import { ratioRestsOn, type ShownSetUp } from '../../call/shown-set-up.ts';
import type { AssessedQuantity } from '../../mechanics/assessment/assessment.ts';
import { inchesWithin, nominalSaid } from '../../mechanics/assessment/common/said.ts';
import { WITHIN } from '../../mechanics/assessment/ratio/bands.ts';
import type { NominalRow, RatioResult } from '../../mechanics/assessment/ratio/detail.ts';
import { toldShares } from '../../mechanics/ratio-readings/told-shares.ts';
import { factsComponent, tableComponent } from '../../web/components.ts';

/** The interval on a ruled line, with the nominals that lie near it. */
function scaleOf(
  { interval95: [low, high], ratio }: RatioResult,
  nominals: readonly NominalRow[],
  id: string,
  name: string,
): ScaleData {
  const width = Math.max(0.06, (high - low) * 2.5);
  const near = nominals.map((each) => each.ratio).filter((nominal) => Math.abs(nominal - ratio) <= width);
  return {
    id,
    title: `${name} beside the nominal ratios`,
    desc: `The 95 % interval runs from ${formatNumber(low, 4)} to ${formatNumber(high, 4)}; nominal ratios are ruled at ${near.map(nominalSaid).join(', ') || 'none near it'}.`,
    from: Math.min(low, ...near) - width / 8,
    to: Math.max(high, ...near) + width / 8,
    low,
    high,
    value: ratio,
    marks: near.map((nominal) => ({ at: nominal, label: nominalSaid(nominal) })),
  };
}

/** The ratio of a set-up in large figures, once nothing is lacking for it; till then what it lacks. */
export function resultOf(context: CallContext, found: ShownSetUp, id = 'ratio'): ResultData {
  const { setUp, detail } = found;
  const { result, lacks } = detail;
  const { spring } = detail.setUp;
  const label = `${ratioName(spring)}, ${valveName(setUp)}`;
  if (result === undefined || lacks.length > 0) return { id, label, none: `Not yet: ${lacks.join('; ')}.` };
  const { value, spread } = ratioFigure(result);
  return {
    id,
    label,
    value,
    spread,
    // What is left after flex stands against no stamp, and on no line with the nominals.
    ...(spring === 'light'
      ? { scale: scaleOf(result, detail.nominals?.rows ?? [], `${id}-scale`, label) }
      : {}),
    basis:
      spring === 'light'
        ? `95 % interval. A ratio within ${formatNumber(WITHIN * 100, 0)} % of its mark counts as agreeing.`
        : '95 % interval; what is left after flex on the running spring.',
    restsOn: ratioRestsOn(context, found).map(({ seq }) => seq),
  };
}

function quantityText({ value, low, high, dimension }: AssessedQuantity): string {
  if (value === undefined || low === undefined || high === undefined) return 'not yet';
  const half = (high - low) / 2;
  return dimension === 'ratio' ? formatRatioInterval(value, half) : inchesWithin(value, half);
}

/** Everything that was read in a set-up, each under its own name with what it holds for. */
const quantityFacts = (quantities: readonly AssessedQuantity[]): Fact[] =>
  quantities.map((quantity) => ({
    label: quantity.name,
    value: quantityText(quantity),
    note: [
      quantity.basis,
      ...quantity.conditions,
      ...(quantity.lacks.length === 0 ? [] : [`lacks ${quantity.lacks.join('; ')}`]),
    ].join(', '),
  }));

const NAMED = { mark: 'stamped on it', 'sold-as': 'sold as', planned: 'planned' } as const;

const othersText = (others: number): string =>
  others === 0 ? '' : ` ${others} others of the list differ by more.`;

/** Near nominals and those that the call has named: whether the interval holds each, and which valve lift it would need. */
export function nominalsTable({ detail }: ShownSetUp): TableData | undefined {
  const { input, lacks, setUp, nominals } = detail;
  if (nominals === undefined || input === undefined) return undefined;
  const held = setUp.spring === 'light' && lacks.length === 0;
  const { readings } = input.valveLift;
  const mean = readings.reduce((sum, lift) => sum + lift, 0) / readings.length;
  return {
    caption: `${ratioName(setUp.spring)} beside the nominals near it`,
    columns: [
      { label: 'Nominal' },
      ...(held ? [{ label: 'The interval' }] : []),
      { label: `Valve lift it needs, ${toldIn('in')}`, number: true },
      { label: `Against the mean read, ${toldIn('in')}`, number: true },
    ],
    rows: nominals.rows.map(({ ratio, named, inside, needsValveLift }) => {
      const off = fromSi(needsValveLift - mean, 'in').value;
      return {
        cells: [
          named === undefined ? nominalSaid(ratio) : `${nominalSaid(ratio)}, ${NAMED[named]}`,
          ...(held ? [inside ? 'holds it' : 'does not reach it'] : []),
          formatFigure(fromSi(needsValveLift, 'in'), { places: 4 }),
          `${off > 0 ? '+' : ''}${formatFigure({ value: off, unit: 'in' }, { places: 4 })}`,
        ],
      };
    }),
    note: `By this set-up alone, and no verdict: the answer stands by itself.${othersText(nominals.others)}`,
  };
}

/** A share of the budget; what cancels has none of its own. */
export const shareText = (share: number | undefined): string =>
  share === undefined ? 'taken off above' : `${share} %`;

/** Where the uncertainty comes from; the shares add up to one. */
function budgetTable({ detail: { result } }: ShownSetUp): TableData | undefined {
  if (result === undefined) return undefined;
  const half = result.coverageFactor * result.standardUncertainty;
  const shares = toldShares(result.budget);
  return {
    caption: 'Where the ± comes from',
    columns: [{ label: 'Source' }, { label: 'In the ratio', number: true }, { label: 'Share', number: true }],
    rows: [
      ...result.budget.map(({ source, contribution }, index) => ({
        cells: [source, formatNumber(contribution, 5), shareText(shares[index])],
      })),
      {
        cells: [
          'All together, one standard uncertainty',
          formatNumber(result.standardUncertainty, 5),
          '100 %',
        ],
      },
    ],
    note: `95 %: ± ${formatNumber(half, 4)}, which is ${formatNumber(result.coverageFactor, 2)} standard uncertainties. What cancels is taken off the error limits.`,
  };
}

/** What the answer rests on: the quantities of the set-up, the nominals, the budget and the assumptions. */
export function groundsComponents(found: ShownSetUp, quantities: readonly AssessedQuantity[]): Component[] {
  const tables = [nominalsTable(found), budgetTable(found)].filter((table) => table !== undefined);
  const { assumptions } = found.detail;
  return [
    factsComponent({ items: quantityFacts(quantities) }),
    ...tables.map(tableComponent),
    ...(assumptions.length === 0
      ? []
      : [{ template: '/pages/call/list' as const, data: { title: 'Assumptions', items: assumptions } }]),
  ];
}
