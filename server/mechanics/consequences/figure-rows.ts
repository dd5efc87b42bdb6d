import { computation as pivotLoad } from '../computations/pivot-load.ts';
import { computation as rollerSweep } from '../computations/roller-sweep.ts';
import { computation as springLoad } from '../computations/spring-load.ts';
import { allowance, SPRING_LOAD } from '../kit/allowances.ts';
import { attempt, type Calculated, known, lacking, together } from './gap-calculation.ts';
import { grossLift, liftAtValve } from './net-lift.ts';
import { cupMove } from './pushrod-gap.ts';
import { springNeeds } from './spring-needs.ts';
import type { ConsequenceInput, FigureRow, RatioFigure } from './types.ts';

interface Asked {
  readonly name: FigureRow['name'];
  readonly title: string;
  readonly dimension: FigureRow['dimension'];
  readonly missing: readonly string[];
  /** What it needs of the ratio itself. */
  readonly needs?: (ratio: RatioFigure) => string[];
  figure(ratio: RatioFigure): Calculated;
}

/** Load of the spring at full lift. */
function openLoad({ spring, ...input }: ConsequenceInput, ratio: RatioFigure): Calculated {
  const lifted = liftAtValve({ ...input, spring }, ratio);
  const rate = known(spring.rate, 'rate');
  // The load does not hang on the solid height.
  const { openLoad: value } = springLoad.compute({
    installedHeight: known(spring.installedHeight, 'installed height'),
    seatLoad: known(spring.seatLoad, 'seat load'),
    rate,
    netLift: lifted.value,
    solidHeight: 0,
  });
  return { value, halfWidth: together(rate * lifted.halfWidth, SPRING_LOAD.share * value) };
}

/** A load that grows with the open load and again with the ratio: both move together with the ratio's error. */
function leverLoad(
  input: ConsequenceInput,
  ratio: RatioFigure,
  which: 'pushrodLoad' | 'pivotLoad',
): Calculated {
  const at = (value: number) => {
    const load = openLoad(input, { ...ratio, value, halfWidth: 0 }).value;
    return pivotLoad.compute({ springLoad: load, ratio: value })[which];
  };
  const value = at(ratio.value);
  const ofRatio = at(ratio.value + ratio.halfWidth) - value;
  return { value, halfWidth: together(ofRatio, SPRING_LOAD.share * value) };
}

function sweepFigure(
  input: ConsequenceInput,
  ratio: RatioFigure,
  which: 'leastSweep' | 'pivotOffset',
): Calculated {
  const pivotToTip = known(input.pivotToTip, 'pivot to tip');
  const at = (lift: number, arm = pivotToTip) =>
    rollerSweep.compute({ pivotToTip: arm, netLift: lift, setAt: 'mid-lift' })[which];
  const lifted = liftAtValve(input, ratio);
  const value = at(lifted.value);
  const ofArm = at(lifted.value, pivotToTip - allowance('arm-length')) - value;
  return { value, halfWidth: together(at(lifted.value + lifted.halfWidth) - value, ofArm) };
}

/** The net lift is the gross lift less the lash: with the lash not known there is none. */
const lashNeeds = ({ lifter, lash }: ConsequenceInput, { lashIn }: RatioFigure): string[] =>
  lashIn === true || lifter === 'hydraulic' ? [] : lacking({ lash });

/** The cup only moves where two ratios are known. */
const otherRatio = ({ before }: ConsequenceInput): string[] =>
  before === undefined ? ['ratio the card assumes'] : [];

const cupFigure = (input: ConsequenceInput, ratio: RatioFigure): Calculated =>
  cupMove(known(input.pivotToTip, 'pivot to tip'), known(input.before, 'ratio before'), ratio);

function asked(input: ConsequenceInput): Asked[] {
  const { spring } = input;
  const lobe = lacking({ 'lobe lift': input.lobeLift });
  const load = [...lobe, ...springNeeds(spring, ['installedHeight', 'seatLoad', 'rate'])];
  const arm = [...lobe, ...lacking({ 'pivot to tip': input.pivotToTip })];
  return [
    {
      name: 'gross-lift',
      title: 'Gross valve lift',
      dimension: 'length',
      missing: lobe,
      needs: ({ lashIn }) => (lashIn === true ? ['the setting of the lash that was left in'] : []),
      figure: (ratio) => grossLift(input, ratio),
    },
    {
      name: 'net-lift',
      title: 'Net valve lift',
      dimension: 'length',
      missing: lobe,
      needs: (ratio) => lashNeeds(input, ratio),
      figure: (ratio) => liftAtValve(input, ratio),
    },
    {
      name: 'open-load',
      title: 'Spring load, open',
      dimension: 'load',
      missing: load,
      figure: (ratio) => openLoad(input, ratio),
    },
    {
      name: 'pushrod-load',
      title: 'Pushrod load, open',
      dimension: 'load',
      missing: load,
      figure: (ratio) => leverLoad(input, ratio, 'pushrodLoad'),
    },
    {
      name: 'pivot-load',
      title: input.mounting === 'stud' ? 'Stud and nut load, open' : 'Load on the rocker’s pivot, open',
      dimension: 'load',
      missing: load,
      figure: (ratio) => leverLoad(input, ratio, 'pivotLoad'),
    },
    {
      name: 'cup-move',
      title: 'Pushrod’s cup moves toward the stud',
      dimension: 'length',
      missing: [...lacking({ 'pivot to tip': input.pivotToTip }), ...otherRatio(input)],
      figure: (ratio) => cupFigure(input, ratio),
    },
    {
      name: 'least-sweep',
      title: 'Least sweep across the stem',
      dimension: 'length',
      missing: arm,
      figure: (ratio) => sweepFigure(input, ratio, 'leastSweep'),
    },
    {
      name: 'pivot-offset',
      title: 'Pivot below the roller’s axis, valve shut',
      dimension: 'length',
      missing: arm,
      figure: (ratio) => sweepFigure(input, ratio, 'pivotOffset'),
    },
  ];
}

function rowOf(input: ConsequenceInput, each: Asked): FigureRow {
  const { before, after } = input;
  const { name, title, dimension, missing } = each;
  const needs = (ratio: RatioFigure) => [...missing, ...(each.needs?.(ratio) ?? [])];
  const figure = (ratio: RatioFigure | undefined) =>
    ratio === undefined || needs(ratio).length > 0 ? undefined : attempt(() => each.figure(ratio));
  const one = name === 'cup-move' ? undefined : figure(before);
  const two = figure(after);
  const unfit = [one, two].flatMap((found) =>
    found?.ok === false ? [`figures that fit together: ${found.why}`] : [],
  );
  return {
    name,
    title,
    dimension,
    ...(one?.ok ? { before: one.value.value } : {}),
    ...(two?.ok ? { after: two.value.value, halfWidth: two.value.halfWidth } : {}),
    missing: [
      ...new Set([
        ...(before === undefined ? ['ratio the card assumes'] : []),
        ...(after === undefined ? ['a ratio to calculate with'] : []),
        ...missing,
        ...[before, after].flatMap((ratio) => (ratio === undefined ? [] : needs(ratio))),
        ...unfit,
      ]),
    ],
  };
}

/** The figures that have no limit of their own, before and after. */
export const figureRows = (input: ConsequenceInput): FigureRow[] =>
  asked(input).map((each) => rowOf(input, each));
