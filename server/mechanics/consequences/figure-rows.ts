import { computation as pivotLoad } from '../computations/pivot-load.ts';
import { computation as rollerSweep } from '../computations/roller-sweep.ts';
import { computation as springLoad } from '../computations/spring-load.ts';
import { allowance, SPRING_LOAD } from '../kit/allowances.ts';
import { attempt, type Calculated, known, lacking, together } from './gap-calculation.ts';
import { netLift } from './net-lift.ts';
import type { ConsequenceInput, FigureRow, RatioFigure } from './types.ts';

interface Asked {
  readonly name: FigureRow['name'];
  readonly title: string;
  readonly dimension: FigureRow['dimension'];
  readonly missing: readonly string[];
  figure(ratio: RatioFigure): Calculated;
}

/** Load of the spring at full lift. */
function openLoad({ spring, ...input }: ConsequenceInput, ratio: RatioFigure): Calculated {
  const lifted = netLift({ ...input, spring }, ratio);
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
  const lifted = netLift(input, ratio);
  const value = at(lifted.value);
  const ofArm = at(lifted.value, pivotToTip - allowance('arm-length')) - value;
  return { value, halfWidth: together(at(lifted.value + lifted.halfWidth) - value, ofArm) };
}

function asked(input: ConsequenceInput): Asked[] {
  const { spring } = input;
  const lobe = lacking({ 'lobe lift': input.lobeLift });
  const load = [
    ...lobe,
    ...lacking({
      'installed height': spring.installedHeight,
      'seat load': spring.seatLoad,
      'spring rate': spring.rate,
    }),
  ];
  const arm = [...lobe, ...lacking({ 'pivot to tip': input.pivotToTip })];
  return [
    {
      name: 'net-lift',
      title: 'Net valve lift',
      dimension: 'length',
      missing: lobe,
      figure: (ratio) => netLift(input, ratio),
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
  const ready = missing.length === 0;
  const one = ready && before !== undefined ? attempt(() => each.figure(before)) : undefined;
  const two = ready && after !== undefined ? attempt(() => each.figure(after)) : undefined;
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
      ...(before === undefined ? ['ratio the card assumes'] : []),
      ...(after === undefined ? ['a measured ratio'] : []),
      ...missing,
      ...new Set(unfit),
    ],
  };
}

/** The figures that have no limit of their own, before and after. */
export const figureRows = (input: ConsequenceInput): FigureRow[] =>
  asked(input).map((each) => rowOf(input, each));
