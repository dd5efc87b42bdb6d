import { defined } from '../../../shared/defined.ts';
import { inSpoken } from '../../../shared/quantities/authored.ts';
import { UNITS, type Unit } from '../../../shared/quantities/units.ts';
import { newReading } from '../../../shared/schemas/commands.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import type { PageForm } from '../../call/forms.ts';
import type { ShownSetUp } from '../../call/shown-set-up.ts';
import type { PassKind } from '../../mechanics/assessment/ratio/read/detail.ts';
import { isDial } from '../../mechanics/kit/lift-tools.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import { choiceField, quantityField, tickField } from '../../web/forms/fields.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import { nextPass, passesSaid } from './kept-meanwhile.ts';

const READING_LABELS = {
  kind: 'What is read',
  peak: 'Reading at full lift',
  zeroReturn: 'Hand back on the base circle at',
  atLobeLift: 'Lobe lift it is read at',
  counted: 'Small hand read first',
};
const PART_WAY = 'valve-lift-at';

/**
 * What the next pass is of: what is next, where that is a pass on this valve; else what this set-up is read for. Both
 * are the assessment's.
 */
export function nextKind({ assessment: { next } }: CallContext, { setUp, detail }: ShownSetUp): PassKind {
  const isHere =
    next?.about.of === 'set-up'
      ? next.about.setUpId === setUp.id
      : next?.about.of === 'valve' && valveName(next.about) === valveName(setUp);
  return (isHere ? next?.reads : undefined) ?? detail.reads;
}

/** The unit of a reading that names none: that of the dial. */
export const dialUnit = (setUp: SetUp): 'in' | 'mm' => {
  const metric: readonly Unit[] = ['mm', 'um'];
  return metric.includes(setUp.method.perTurn.unit) ? 'mm' : 'in';
};

/** `5 turns 66`, in the way this dial says it. */
function exampleOf(setUp: SetUp): string {
  const turn = (setUp.method.perTurn.value * UNITS[setUp.method.perTurn.unit].toSi) / UNITS.in.toSi;
  return Math.abs(turn - 0.1) < 1e-9
    ? inSpoken('Turns, then the needle: “5 turns 66”, or .566.')
    : 'Turns, then the needle.';
}

function kinds(
  context: CallContext,
  setUp: SetUp,
  readings: readonly Reading[],
  partWay: boolean,
): Record<string, string> {
  const on = valveName(setUp);
  if (partWay) return { [PART_WAY]: `Valve lift ${on}, part of the way up` };
  const words = {
    'valve-lift': `Valve lift ${on}, pass ${nextPass(readings, 'valve-lift')}`,
    'lobe-lift': `Lobe lift ${on}, pass ${nextPass(readings, 'lobe-lift')}`,
  };
  if (context.side === 'bench') return words;
  return {
    ...words,
    'stated-valve-lift': 'Valve lift the caller uses',
    'stated-lobe-lift': 'Lobe lift the caller uses',
  };
}

/** What the next pass is of, with the way to say that it is another. */
function kindSaid(context: CallContext, setUp: SetUp, readings: readonly Reading[], kind = ''): string {
  const said = kinds(context, setUp, readings, kind === PART_WAY)[kind];
  return said === undefined ? READING_LABELS.kind : `${said}; change`;
}

/** What the form begins with: the kind that is next, or what the address asks for. */
function initialOf(context: CallContext, found: ShownSetUp, asked: Fields): Fields {
  const kind = ['valve-lift', 'lobe-lift', PART_WAY].find((each) => each === asked.kind);
  return {
    kind: kind ?? nextKind(context, found),
    ...(kind === PART_WAY ? { atLobeLift: asked.atLobeLift ?? '' } : {}),
  };
}

/** One pass: what, how high, and where the hand came back to. The pass gets its number when it is kept. */
export function readingForm(context: CallContext, found: ShownSetUp, asked: Fields = {}): PageForm {
  const { setUp, readings } = found;
  const big = context.side === 'bench' ? { big: true } : { autofocus: true };
  const assume = dialUnit(setUp);
  const dial = isDial(setUp.method.tool);
  const initial = initialOf(context, found, asked);
  const partWay = (shown: Fields) => (shown.kind ?? initial.kind) === PART_WAY;
  return {
    name: 'reading',
    action: `${context.base}/readings`,
    labels: READING_LABELS,
    schema: newReading,
    // Passes that wait on a phone are counted on there: only the desk says which number it saw.
    hidden: { setUpId: setUp.id, ...(context.side === 'desk' ? { 'was-passes': passesSaid(readings) } : {}) },
    keeps: 'kind',
    initial,
    groups: (shown) => [
      {
        columns: context.side === 'desk',
        slots: [
          ...(partWay(shown.typed)
            ? [
                quantityField(shown, 'atLobeLift', READING_LABELS.atLobeLift, 'length', {
                  assume,
                  hint: 'Turn up to it, never back down: slack stands on one side then.',
                }),
              ]
            : []),
          quantityField(
            shown,
            'peak',
            partWay(shown.typed) ? 'Reading there' : READING_LABELS.peak,
            'length',
            {
              assume,
              ...(dial ? { perTurn: setUp.method.perTurn } : {}),
              ...defined({
                names: kinds(context, setUp, readings, partWay(shown.typed))[
                  shown.typed.kind ?? initial.kind ?? ''
                ],
              }),
              hint: dial ? exampleOf(setUp) : 'The lift: the second reading less the first.',
              ...big,
            },
          ),
          ...(dial
            ? [
                quantityField(shown, 'zeroReturn', READING_LABELS.zeroReturn, 'length', {
                  assume,
                  optional: true,
                  hint: inSpoken('Zero is 0. More than .002 off: the pass is doubted.'),
                }),
                tickField(shown, 'counted', READING_LABELS.counted),
              ]
            : []),
        ],
      },
      {
        legend: kindSaid(context, setUp, readings, shown.typed.kind ?? initial.kind),
        fold: shown.faults.some(({ field }) => field === 'kind') ? 'open' : 'shut',
        slots: [
          choiceField(
            shown,
            'kind',
            READING_LABELS.kind,
            kinds(context, setUp, readings, partWay(shown.typed)),
            {
              inline: true,
            },
          ),
        ],
      },
    ],
    buttons: [{ label: 'Save reading', kind: 'primary', key: 'k' }],
  };
}
