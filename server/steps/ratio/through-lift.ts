import { formatRatioInterval } from '../../../shared/quantities/format.ts';
import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import type { ShownSetUp } from '../../call/shown-set-up.ts';
import { encoderFor } from '../../compute/encode.ts';
import { rulerOf } from '../../drawings/drawing.ts';
import { ratioThroughLift as drawThroughLift } from '../../drawings/from-answers/rocker.ts';
import { bareInches, inches } from '../../mechanics/assessment/common/said.ts';
import type { ThroughLiftDetail } from '../../mechanics/assessment/ratio/read/detail.ts';
import { computation } from '../../mechanics/computations/ratio-through-lift.ts';

const encode = encoderFor(computation.output);
const TWO = 2;

const length = (si: number, uncertainty: number) => `${bareInches(si)} ± ${inches(TWO * uncertainty)}`;

function figuresComponents({ result }: ThroughLiftDetail): Component[] {
  if (result === undefined) return [];
  const { ratio, lashLeftIn } = result;
  return [
    {
      template: '/parts/facts',
      data: {
        block: true,
        items: [
          {
            label: 'Ratio of the whole line',
            value: formatRatioInterval(ratio.value, TWO * ratio.standardUncertainty),
          },
          {
            label: 'Lash left in, at the valve',
            value: length(lashLeftIn.value, lashLeftIn.standardUncertainty),
          },
        ],
      },
    },
  ];
}

function drawingComponents({ input, result }: ThroughLiftDetail): Component[] {
  if (input === undefined || result === undefined) return [];
  const drawn = drawThroughLift(input, encode(result, 'inch'), {
    id: 'drawing-through-lift',
    ruler: rulerOf(spokenUnits()),
  });
  return drawn.map((data) => ({ template: '/parts/drawing', data }));
}

/** Readings part of the way up: what the line through them says, drawn step by step, and the way to one more. */
export function throughLiftComponents(context: CallContext, { setUp, detail }: ShownSetUp): Component[] {
  const through = detail.throughLift;
  const stopped = context.assessment.stop.length > 0;
  const query = new URLSearchParams({ 'set-up': setUp.id, kind: 'valve-lift-at' });
  const more: Component = {
    template: '/pages/call/actions',
    data: {
      buttons: [{ label: 'Read it part of the way up', href: `${context.base}/steps/ratio?${query}` }],
    },
  };
  const lacking: Component[] = through.lacks.map((text) => ({
    template: '/parts/notice',
    data: { text: `Not yet: ${text}.` },
  }));
  return [
    ...figuresComponents(through),
    ...drawingComponents(through),
    ...lacking,
    ...(stopped ? [] : [more]),
  ];
}
