import { formatNumber, formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { ResultData, ScaleData } from '../../../views/parts/result.examples.ts';
import type { VerdictData } from '../../../views/parts/verdict.examples.ts';
import type { SetUpRatio } from '../../assessment/ratio/ratio.ts';
import { valveName } from '../../call/context.ts';
import { nominalText, ratioFigure, ratioName } from '../../call/ratio-text.ts';

type Result = NonNullable<SetUpRatio['result']>;
type Nominals = NonNullable<Result['nominals']>;

const list = (nominals: Nominals) => nominals.map((each) => nominalText(each.ratio)).join(' and ');

/** The verdict over all nominals. A running-spring ratio gets none: it isn't set against a stamp. */
export function verdictOf(result: Result, spring: string): VerdictData | undefined {
  const nominals = result.nominals ?? [];
  if (spring !== 'light' || nominals.length === 0) return undefined;
  const agrees = nominals.filter((each) => each.verdict === 'agrees');
  const either = nominals.filter((each) => each.verdict === 'cannot-tell');
  if (agrees.length > 0) return { word: 'agrees', text: `with ${list(agrees)} and with no other nominal.` };
  if (either.length > 0)
    return { word: 'cannot-tell', text: `between ${list(either)}: all lie inside the interval.` };
  return { word: 'differs', text: 'from every nominal of the list.' };
}

/** The interval on a ruled line, with the nominals that lie near it. */
export function scaleOf(
  result: Result,
  id: string,
  name: string,
  word: VerdictData['word'] | undefined,
): ScaleData {
  const [low, high] = result.interval95;
  const width = Math.max(0.06, (high - low) * 2.5);
  const nominals = (result.nominals ?? []).map((each) => each.ratio);
  const near = nominals.filter((nominal) => Math.abs(nominal - result.ratio) <= width);
  const from = Math.min(low, ...near) - width / 8;
  const to = Math.max(high, ...near) + width / 8;
  const tone = word === 'agrees' || word === 'differs' || word === 'cannot-tell' ? { verdict: word } : {};
  return {
    id,
    title: `${name} against the nominal ratios`,
    desc: `The 95 % interval runs from ${formatNumber(low, 4)} to ${formatNumber(high, 4)}; nominal ratios are ruled at ${near.map(nominalText).join(', ') || 'none near it'}.`,
    from,
    to,
    low,
    high,
    value: result.ratio,
    marks: near.map((nominal) => ({ at: nominal, label: nominalText(nominal) })),
    ...tone,
  };
}

/** The ratio of a set-up with its interval, or what it still lacks. */
export function resultOf(found: SetUpRatio, id = 'ratio'): ResultData {
  const { setUp, result } = found;
  const name = ratioName(setUp.method.spring);
  const label = `${name}, ${valveName(setUp)}`;
  if (result === undefined) return { id, label, none: `Not yet: ${found.missing.join('; ')}.` };
  const { value, spread } = ratioFigure(result);
  const verdict = verdictOf(result, setUp.method.spring);
  return {
    id,
    label,
    value,
    spread,
    scale: scaleOf(result, `${id}-scale`, label, verdict?.word),
    ...(verdict === undefined ? {} : { verdict }),
    basis:
      setUp.method.spring === 'light'
        ? '95 % interval; the light-spring ratio is the one that is set against a stamp.'
        : '95 % interval; what is left after flex on the running spring. It can’t be set against a stamp.',
    restsOn: found.rests.map((reading) => reading.seq),
  };
}

/** Each nominal: does the interval hold it, and which valve lift it would need on this lobe. */
export function nominalsTable(found: SetUpRatio): Component | undefined {
  const { result, setUp, input } = found;
  if (result?.nominals === undefined || input === undefined) return undefined;
  const read = input.valveLift.readings;
  const mean = read.reduce((sum, lift) => sum + lift, 0) / read.length;
  return {
    template: '/parts/table',
    data: {
      caption: `${ratioName(setUp.method.spring)} against each nominal`,
      columns: [
        { label: 'Nominal' },
        { label: 'The reading' },
        { label: 'Valve lift it needs, in', number: true },
        { label: 'Against the mean read, in', number: true },
      ],
      rows: result.nominals.map((nominal) => {
        const needs = fromSi(nominal.needsValveLift, 'in').value;
        const off = fromSi(nominal.needsValveLift - mean, 'in').value;
        return {
          cells: [
            nominalText(nominal.ratio),
            { text: '', verdict: nominal.verdict },
            formatNumber(needs, 4),
            `${off > 0 ? '+' : ''}${formatNumber(off, 4)}`,
          ],
        };
      }),
      note:
        setUp.method.spring === 'light'
          ? 'Agrees: alone inside the interval. Cannot tell: inside it with another. Differs: outside.'
          : 'As read on the running spring. It says which nominal the valve moves by now, not what the arm is stamped.',
    },
  };
}

/** Where the uncertainty comes from; the shares add up to one. */
export function budgetTable(found: SetUpRatio): Component | undefined {
  const { result } = found;
  if (result === undefined) return undefined;
  const half = result.coverageFactor * result.standardUncertainty;
  return {
    template: '/parts/table',
    data: {
      caption: 'Where the ± comes from',
      columns: [
        { label: 'Source' },
        { label: 'In the ratio', number: true },
        { label: 'Share', number: true },
      ],
      rows: [
        ...result.budget.map((line) => ({
          cells: [
            line.source,
            formatNumber(line.contribution, 5),
            `${formatNumber(line.share * 100, 0).replace(/^$/, '0')} %`,
          ],
        })),
        {
          cells: [
            'All together, one standard uncertainty',
            formatNumber(result.standardUncertainty, 5),
            '100 %',
          ],
        },
      ],
      note: `95 %: ± ${formatNumber(half, 4)}, which is ${formatNumber(result.coverageFactor, 2)} standard uncertainties. A negative share is an error that cancels.`,
    },
  };
}

/** What the ratio assumes, and what goes with it. */
export function groundsOf(found: SetUpRatio): Component[] {
  if (found.result === undefined) return [];
  return [
    {
      template: '/pages/call/list',
      data: { title: 'Assumptions', items: found.assumptions },
    },
    ...found.cautions.map((text) => ({ template: '/parts/notice', data: { kind: 'caution', text } })),
  ];
}

export const meanText = (si: number): string => formatQuantity(fromSi(si, 'in'), { places: 4 });
