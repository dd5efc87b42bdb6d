import { z } from 'zod';
import { type FieldRange, usually } from '../quantities/field-range.ts';
import { BEFORE_STOP } from './before-stop.ts';
import { CAN_BE } from './can-be.ts';
import { entered } from './entered.ts';
import { choice, listOf } from './fields.ts';
import { type Gauged, gaugedOrTurns } from './gauged.ts';
import { bare } from './number-fields.ts';
import { heldBack, readOnceKnown } from './read-by-kind.ts';
import type { SaidInTurns } from './said-in-turns.ts';
import { someWords } from './texts.ts';
import { evenIfFaulty } from './two-forms.ts';
import { keysOf, LIFTERS, SPRINGS, VALVES } from './words.ts';

/** What a sheet holds of each valve. */
export const SHEET_KINDS = {
  'lobe-lift': 'Lobe lift',
  'valve-lift': 'Valve lift',
  lash: 'Lash',
  preload: 'Preload',
  'coil-bind': 'Room to coil bind',
  'retainer-to-seal': 'Retainer to seal',
  'piston-to-valve': 'Piston to valve',
  'pushrod-to-head': 'Pushrod to head',
  'slot-to-stud': 'Rocker slot to stud',
  'rocker-to-retainer': 'Rocker to retainer',
  cover: 'Anything to the cover',
} as const;
export type SheetKind = keyof typeof SHEET_KINDS;

/** Lifts are asked about once they are kept, a whole column at once: one column in another unit is one question. */
export const SHEET_ASKED_LATER: readonly SheetKind[] = ['lobe-lift', 'valve-lift'];

/** A gap with what it mostly is: some times its limit, not many. */
const gap = (least: number, most: number): FieldRange => usually(CAN_BE.gap, least, most, 'in');

/** What each of them can be. */
export const SHEET_CAN_BE: Readonly<Record<SheetKind, FieldRange>> = {
  'lobe-lift': CAN_BE.reading,
  'valve-lift': CAN_BE.reading,
  lash: CAN_BE.lashFound,
  preload: CAN_BE.preload,
  'coil-bind': gap(0.006, 0.35),
  'retainer-to-seal': gap(0.006, 0.4),
  'piston-to-valve': gap(0.006, 0.3),
  'pushrod-to-head': gap(0.006, 0.2),
  'slot-to-stud': gap(0.006, 0.15),
  'rocker-to-retainer': gap(0.006, 0.25),
  cover: gap(0.006, 0.35),
};

/** Turns said of these are turns of the nut that sets them. */
export const isOfNut = (kind: SheetKind): boolean => kind === 'lash' || kind === 'preload';

/** The kinds that are gaps with a limit. */
export const GAP_KINDS = [
  'coil-bind',
  'retainer-to-seal',
  'piston-to-valve',
  'pushrod-to-head',
  'slot-to-stud',
  'rocker-to-retainer',
  'cover',
] as const satisfies readonly SheetKind[];
export type GapKind = (typeof GAP_KINDS)[number];

export const TOOLS = {
  'not-said': 'Not said',
  indicator: 'Dial indicator',
  caliper: 'Caliper',
  feeler: 'Feeler gauge',
  'go-no-go': 'Go/no-go gauge',
  wire: 'Bent wire gauge',
  clay: 'Clay',
  rule: 'Rule',
  guess: 'A guess, not measured',
} as const;

export const SHEET_ARMS = {
  these: 'With the arms that are on it now',
  before: 'With the arms fitted before',
} as const;

const HOW = {
  spring: choice(keysOf(SPRINGS), 'spring on the valve while reading').optional(),
  lifter: choice(keysOf(LIFTERS), 'lifter under the pushrod while reading').optional(),
  tool: choice(keysOf(TOOLS), 'what it was read with').optional(),
};

/** The columns of a sheet that may have been read in a way of their own. */
export const SHEET_COLUMNS = {
  'lobe-lift': 'Lobe lift',
  'valve-lift': 'Valve lift',
  set: 'Lash and preload',
  gaps: 'Gaps',
} as const;
type SheetColumn = keyof typeof SHEET_COLUMNS;

export const columnOf = (kind: SheetKind): SheetColumn =>
  kind === 'lobe-lift' || kind === 'valve-lift'
    ? kind
    : kind === 'lash' || kind === 'preload'
      ? 'set'
      : 'gaps';

const column = z.strictObject(HOW).optional();

const batch = {
  spring: choice(keysOf(SPRINGS), 'spring on the valve while reading').default('not-said'),
  lifter: choice(keysOf(LIFTERS), 'lifter under the pushrod while reading').default('not-said'),
  tool: choice(keysOf(TOOLS), 'what it was read with').default('not-said'),
  arms: choice(keysOf(SHEET_ARMS), 'with which arms').default('these'),
  columns: z
    .strictObject({ 'lobe-lift': column, 'valve-lift': column, set: column, gaps: column })
    .optional()
    .meta({ description: 'how a column was read, where it differs from the rest' }),
  perTurn: entered(
    'length',
    'travel of the dial’s big hand in one turn; left out, that of the newest set-up',
    CAN_BE.perTurn,
  ).optional(),
  ...BEFORE_STOP,
};
export type SheetHow = z.output<z.ZodObject<typeof batch>>;

const READING = 'the reading: one figure, turns of the dial (4 turns 37), or the two gauges it lies between';
const ANY_READING = gaugedOrTurns(READING, CAN_BE.sheetReading, { asksLater: true });
/** Each kind by what it can be. */
const readings = new Map(
  keysOf(SHEET_KINDS).map((kind) => [
    kind,
    gaugedOrTurns(READING, SHEET_CAN_BE[kind], {
      asksLater: SHEET_ASKED_LATER.includes(kind),
      ofNut: isOfNut(kind),
    }),
  ]),
);

const readingShape = {
  cylinder: bare('cylinder number, in the engine’s own numbering', { least: 1, most: 16, whole: true }),
  valve: choice(keysOf(VALVES), 'which valve of the cylinder'),
  kind: choice(keysOf(SHEET_KINDS), 'what was read'),
  reading: heldBack({
    like: ANY_READING,
    canBe: CAN_BE.sheetReading,
    byKind: Object.values(SHEET_CAN_BE),
    standIn: (): Gauged | SaidInTurns => ({ typed: '', readAs: '', unit: 'in' }),
  }),
  armId: z
    .uuid()
    .optional()
    .meta({ description: 'the arm it was read with; left out, the one that sits there now' }),
};

export const sheetReading = z.strictObject(readingShape).superRefine(
  readOnceKnown('reading', ({ kind }) => readings.get(kind) ?? ANY_READING),
  evenIfFaulty,
);

/** Readings of several valves, all taken the same way. All are kept or none. */
export const newSheetReadings = z.strictObject({
  ...batch,
  readings: listOf(sheetReading, 'readings', 1, 400),
});
export type NewSheetReadings = z.output<typeof newSheetReadings>;

/** The same as text from a spreadsheet. */
export const pasteSheet = z.strictObject({
  ...batch,
  text: someWords('rows of a spreadsheet: a heading row, then one row for each valve', 50_000),
  unit: choice(['in', 'mm', 'thou'], 'the unit of figures that name none').default('in'),
  keep: z
    .boolean()
    .default(false)
    .meta({ description: 'keep the readings; left out, they are only looked at' }),
});
export type PasteSheet = z.output<typeof pasteSheet>;

export const correctSheetReading = z.strictObject({
  reading: gaugedOrTurns(
    'the reading as it should be; left out, the reading is struck',
    CAN_BE.sheetReading,
    { asksLater: true },
  ).optional(),
  reason: someWords('why the reading is replaced', 500),
});

/** One valve at a time, as a form has it; an empty field is no reading. */
export const oneValve = z.strictObject({
  ...batch,
  cylinder: readingShape.cylinder,
  valve: readingShape.valve,
  armId: readingShape.armId,
  figures: z
    .strictObject(
      Object.fromEntries(
        keysOf(SHEET_KINDS).map((kind) => [
          kind,
          gaugedOrTurns(SHEET_KINDS[kind], SHEET_CAN_BE[kind], { ofNut: isOfNut(kind) }).optional(),
        ]),
      ),
    )
    .optional(),
});
