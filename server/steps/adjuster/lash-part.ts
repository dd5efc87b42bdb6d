import { formatFigure, formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import type { LashLog } from '../../assessment/lash/lash-log.ts';
import type { CallContext } from '../../call/context.ts';
import { formComponent, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { arrangedComponents } from '../../call/worked/arranged.ts';
import { rulerOf } from '../../drawings/drawing.ts';
import { lashGap } from '../../drawings/lash-gap.ts';
import type { LashGrowth, LashQuestion } from '../../mechanics/lash/types.ts';
import type { LoggedLash } from '../../records/lash-log/lash-log.ts';
import { cautionComponent, drawingComponent, tableComponent } from '../../web/components.ts';
import { lashForm } from './lash-form.ts';

const inches = (si: number): string => formatQuantity(fromSi(si, 'in'), { places: 3 });

function growthText({ low, high, heatDiffers }: LashGrowth): string {
  if (heatDiffers) return 'hot against cold: not compared';
  if (low === undefined && high === undefined) return 'cannot be told';
  const signed = (si: number | undefined) =>
    si === undefined ? 'open' : `${si > 0 ? '+' : ''}${inches(si)}`;
  return low === high ? signed(low) : `${signed(low)} to ${signed(high)}`;
}

function stopComponent({ cylinder, valve }: LashGrowth): Component {
  return cautionComponent(
    `the gap on ${cylinder} ${valve} grew again after it was set again. Setting it once more hides it. Stop: measure that lobe’s lift against its siblings, and have a qualified shop look.`,
  );
}

const questionComponent = (question: LashQuestion, index: number): Component => ({
  template: '/parts/question',
  data: {
    id: `lash-${question.code}-${index}`,
    ...(question.cylinder === undefined ? {} : { about: `${question.cylinder} ${question.valve ?? ''}` }),
    words: question.ask,
    size: question.size,
    test: question.test,
    answers: [],
  },
});

/** `.018 in`, or the feelers it lies between: `.024 to .026 in`. */
function gapText({ reading }: LoggedLash['reading']): string {
  const { low, high, readAs, unit } = reading;
  if (low === undefined || high === undefined) return readAs;
  const from = formatFigure({ value: low, unit }, { places: 3 });
  return `${from} to ${formatQuantity({ value: high, unit }, { places: 3 })}`;
}

const NUT = { 'not-looked': 'nut not looked at', held: 'nut had not moved', moved: 'nut had moved' } as const;

function lineCells(context: CallContext, line: LoggedLash): (string | TableCell)[] {
  const { reading, engine, moment, nut, on, doneBy } = line;
  const by = doneBy === '' ? reading.by : `${doneBy}; entered by ${reading.by}`;
  const how = `${moment === 'set' ? 'set' : 'found'}${engine === 'not-said' ? '' : `, ${engine}`}`;
  return [
    `${reading.cylinder} ${reading.valve}`,
    { text: on, why: by },
    { text: how, why: NUT[nut] },
    { text: gapText(reading), href: `${context.base}/sheet/readings/${reading.id}` },
  ];
}

function logTable(context: CallContext, { lines, limit }: LashLog): TableData {
  return {
    caption: 'Lash log, newest day first',
    columns: [{ label: 'Valve' }, { label: 'Day, who' }, { label: 'How' }, { label: 'Lash', number: true }],
    rows: lines.toReversed().map((line) => ({ cells: lineCells(context, line) })),
    empty: 'No lash kept yet. The first line: what it was found at, before anything is turned.',
    note: `Growth over ${limit.value.readAs} on one valve is asked about (${limit.source}). Hot and cold are not set against each other.`,
  };
}

function growthComponents({ growths }: LashLog): Component[] {
  if (growths.length === 0) return [];
  return [
    {
      template: '/parts/table',
      data: {
        caption: 'Growth since it was last set',
        columns: [{ label: 'Valve' }, { label: 'Growth', number: true }],
        rows: growths.map((growth) => ({
          cells: [`${growth.cylinder} ${growth.valve}`, growthText(growth)],
        })),
      },
    },
  ];
}

/** The lash log: how the gap is read, the line that comes next, what the growth raises, and every line so far. */
export function lashPart(context: CallContext, log: LashLog, again: RejectedForm | undefined): StepBody {
  const form = lashForm(context, log.lines.toSorted((a, b) => a.reading.seq - b.reading.seq).at(-1));
  const drawing = lashGap({}, { id: 'asked-lash', ruler: rulerOf('inch') });
  return {
    forms: context.call.held ? [] : [form],
    slots: arrangedComponents(context, {
      begun: log.lines.length > 0,
      entry: context.call.held ? [] : [formComponent(form, again)],
      drawings: [drawingComponent(drawing)],
      top: [...log.again.map(stopComponent), ...log.questions.map(questionComponent)],
      rest: [...growthComponents(log), tableComponent(logTable(context, log))],
    }),
  };
}
