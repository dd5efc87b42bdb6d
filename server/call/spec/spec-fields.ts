import { defined } from '../../../shared/defined.ts';
import type { Dimension } from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { PUSHROD_TAKEN, VALVE_GEARS, type ValveGear } from '../../../shared/schemas/words.ts';

/** One entry of a build's specification as a form has it; `path` is its place in the specification. */
export interface SpecField {
  readonly path: string;
  readonly label: string;
  readonly dimension?: Dimension;
  /** A word list makes it a pick. */
  readonly words?: Readonly<Record<string, string>>;
  readonly hint?: string;
  /** The valve gears it is asked of; left out, all of them. What is entered already stays in sight. */
  readonly gears?: readonly ValveGear[];
}

/** Fields that are shown together; at the bench each group is a screen of its own. */
export interface SpecGroup {
  readonly legend: string;
  readonly fields: readonly SpecField[];
  readonly hint?: string;
  /** Seldom asked: one tap away at the desk until something of it is said. */
  readonly seldom?: boolean;
  /** Rows of durations of this lobe stand below the fields. */
  readonly durations?: 'intake' | 'exhaust';
}

const length = (path: string, label: string, hint?: string): SpecField => ({
  path,
  label,
  dimension: 'length',
  ...defined({ hint }),
});

const LIFTER_TYPES = {
  'solid-flat': 'Solid, flat',
  'solid-roller': 'Solid, roller',
  'hydraulic-flat': 'Hydraulic, flat',
  'hydraulic-roller': 'Hydraulic, roller',
};
const MOUNTINGS = { stud: 'Stud', pedestal: 'Pedestal', shaft: 'Shaft' };
const USES = { street: 'Street', race: 'Race' };
const ROD_MATERIALS = { steel: 'Steel', aluminium: 'Aluminium' };
const STUD_SIZES = { '5/16': '5/16', '3/8': '3/8', '7/16': '7/16' };
const PUSHROD_OVER = { ends: 'Its ends', gauge: 'A gauge' };
const BOLTING = { 'through-centre': 'Through the centre', perimeter: 'Round the edge' };

export const BUILD_GROUPS: readonly SpecGroup[] = [
  {
    legend: 'Engine',
    fields: [
      { path: 'engine.description', label: 'Block and head, in plain words' },
      {
        path: 'engine.valveGear',
        label: 'Between cam and valve',
        words: VALVE_GEARS,
        hint: 'Not said counts as pushrods. Changing it keeps every entry.',
      },
      { path: 'engine.lifter', label: 'Lifter type', words: LIFTER_TYPES },
      { path: 'engine.rockerMounting', label: 'Rocker mounting', words: MOUNTINGS, gears: ['pushrod'] },
      {
        path: 'engine.studSize',
        label: 'Rocker stud',
        words: STUD_SIZES,
        hint: 'Thread, in inches.',
        gears: ['pushrod'],
      },
      {
        path: 'engine.shimStock',
        label: 'Lash shims that can be had',
        dimension: 'length',
        hint: 'Each measured, each there once: 2.60 mm, 2.65 mm, 2.65 mm. What goes into a valve later is counted off.',
        gears: ['bucket', 'finger-follower'],
      },
      { path: 'engine.coverBolting', label: 'Valve cover bolted', words: BOLTING },
      {
        path: 'engine.use',
        label: 'Built for',
        words: USES,
        hint: 'Which default limits count; the part maker’s figures go first.',
      },
    ],
  },
  {
    legend: 'Bottom end',
    fields: [
      { path: 'engine.cylinders', label: 'Cylinders' },
      { path: 'engine.intakeValves', label: 'Intakes in a cylinder', hint: 'Empty: one.' },
      { path: 'engine.exhaustValves', label: 'Exhausts in a cylinder', hint: 'Empty: one.' },
      { path: 'engine.firingOrder', label: 'Firing order' },
      {
        path: 'engine.bankOrder',
        label: 'Cylinders along the banks',
        hint: 'Front to back, one bank after the other: 1 3 5 7 / 2 4 6 8.',
      },
      length('engine.bore', 'Bore'),
      length('engine.stroke', 'Stroke'),
      length('engine.rodLength', 'Rod length', 'Centre to centre.'),
      { path: 'engine.rodMaterial', label: 'Rods of', words: ROD_MATERIALS },
      length('engine.pinOffset', 'Pin offset', 'Positive toward the side the crankpin moves to after TDC.'),
      { path: 'engine.valveAngle', label: 'Valve angle', dimension: 'angle', hint: 'Valve to bore axis.' },
    ],
  },
  {
    legend: 'Valve springs',
    hint: 'As fitted: with the actual seat, locator, shims, retainer and keepers.',
    fields: [
      { path: 'springs.description', label: 'Spring, in plain words' },
      length('springs.installedHeight', 'Installed height', 'Valve shut.'),
      { path: 'springs.seatLoad', label: 'Seat load', dimension: 'load' },
      { path: 'springs.rate', label: 'Rate', dimension: 'rate' },
      length('springs.solidHeight', 'Coil-bind height'),
      length('springs.retainerToSeal', 'Retainer to seal', 'Retainer underside to seal top, valve shut.'),
    ],
  },
  {
    legend: 'Inner spring, where there are two',
    seldom: true,
    hint: 'With it, the figures above are the outer one’s alone: ask for each by itself, not for both together.',
    fields: [
      length('springs.inner.installedHeight', 'Inner: installed height', 'Left out, as the outer.'),
      { path: 'springs.inner.seatLoad', label: 'Inner: seat load', dimension: 'load' },
      { path: 'springs.inner.rate', label: 'Inner: rate', dimension: 'rate' },
      length('springs.inner.solidHeight', 'Inner: coil-bind height'),
    ],
  },
  {
    legend: 'Pushrods',
    seldom: true,
    hint: 'Measured or told. One by a checking pushrod is worked out with the tip mark and geometry.',
    fields: [
      { ...length('pushrods.intake', 'Intake pushrod'), gears: ['pushrod'] },
      { ...length('pushrods.exhaust', 'Exhaust pushrod'), gears: ['pushrod'] },
      {
        path: 'pushrods.over',
        label: 'Length over',
        words: PUSHROD_OVER,
        hint: 'Over the ends reads a little longer: say which it is.',
        gears: ['pushrod'],
      },
      { path: 'pushrods.taken', label: 'How it was taken', words: PUSHROD_TAKEN, gears: ['pushrod'] },
    ],
  },
];

const lobe = (valve: 'intake' | 'exhaust', name: string): SpecGroup => ({
  legend: `${name} lobe`,
  durations: valve,
  fields: [
    length(`cam.${valve}.lobeLift`, `Lobe lift, ${valve}`, 'Rise of the lifter, not of the valve.'),
    length(`cam.${valve}.cardValveLift`, `Valve lift on the card, ${valve}`),
    {
      path: `cam.${valve}.centreline`,
      label: `Centreline, ${valve}`,
      dimension: 'angle',
      hint: valve === 'intake' ? 'Degrees after top.' : 'Degrees before top.',
    },
    length(`cam.${valve}.lash`, `Lash on the card, ${valve}`),
  ],
});

export const CAM_GROUPS: readonly SpecGroup[] = [
  {
    legend: 'The card',
    fields: [
      { path: 'cam.card', label: 'Name or number on the card', hint: 'Word for word.' },
      {
        path: 'cam.assumedRatio',
        label: 'Rocker ratio the card assumes',
        hint: 'It stands on the card beside the valve lift; it says nothing about the arms you have.',
        gears: ['pushrod', 'finger-follower', 'cam-rocker'],
      },
      {
        path: 'cam.lashAt',
        label: 'The lash on it is for an engine that is',
        words: { cold: 'Cold', hot: 'Hot' },
        gears: ['bucket'],
      },
    ],
  },
  lobe('intake', 'Intake'),
  lobe('exhaust', 'Exhaust'),
];

export const ROCKER_GROUP: SpecGroup = {
  legend: 'What the rockers are sold as',
  fields: [
    { path: 'rockers.nominalRatio', label: 'Ratio the rockers are sold as' },
    { path: 'rockers.plannedRatio', label: 'Ratio that is to be fitted, if a change is planned' },
    { path: 'rockers.plannedExhaustRatio', label: 'For the exhausts, if theirs is another' },
    { path: 'rockers.alsoPlanned.0', label: 'Another ratio to set beside it' },
    { path: 'rockers.alsoPlanned.1', label: 'A third ratio to set beside it' },
    { path: 'rockers.family', label: 'Family, as the box or maker calls it' },
  ],
};

const MOST_ROWS = 20;
/** Rows for durations: three, or one more than there are, so that none on record is left out of the form. */
export function durationRows(spec: BuildSpec, valve: 'intake' | 'exhaust'): number {
  return Math.min(MOST_ROWS, Math.max(3, (spec.cam?.[valve]?.durations?.length ?? 0) + 1));
}
export const durationField = (valve: string, row: number, part: 'atLift' | 'duration') =>
  `cam.${valve}.durations.${row}.${part}`;

/** The groups without the fields that this valve gear has no use for; what is entered stays in sight. */
export const groupsFor = (groups: readonly SpecGroup[], spec: BuildSpec, text: (path: string) => string) =>
  groups.map(
    (group): SpecGroup => ({
      ...group,
      fields: group.fields.filter(
        ({ gears, path }) =>
          gears === undefined || gears.includes(spec.engine?.valveGear ?? 'pushrod') || text(path) !== '',
      ),
    }),
  );
