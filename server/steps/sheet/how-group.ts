import { inSpoken } from '../../../shared/quantities/authored.ts';
import { formatQuantity } from '../../../shared/quantities/format.ts';
import { SHEET_ARMS, TOOLS } from '../../../shared/schemas/sheet.ts';
import { LIFTERS, SPRINGS } from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { FormGroup } from '../../../views/parts/form.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { isStopped } from '../../call/under-stop.ts';
import { newestDial } from '../../records/sheet/said-in-turns.ts';
import { type FormState, quantityField, selectField } from '../../web/forms/fields.ts';

export const HOW = {
  spring: 'Spring on the valve',
  lifter: 'Lifter',
  tool: 'Read with',
  'columns.lobe-lift.tool': 'Lobes read with',
  'columns.gaps.tool': 'Gaps read with',
  perTurn: 'Dial: travel in one turn',
  arms: 'Arms',
};

/**
 * Under a stop nothing is read on the engine: what is entered was read with the arms before. What was typed before the
 * stop came up stays as it was said.
 */
const armsOf = (context: CallContext, { typed }: FormState): Partial<typeof SHEET_ARMS> =>
  isStopped(context) && typed.arms !== 'these' ? { before: SHEET_ARMS.before } : SHEET_ARMS;

const isFaulty = (shown: FormState, names: readonly string[]) =>
  shown.faults.some(({ field }) => names.some((name) => field === name || field.startsWith(`${name}.`)));

/** On a phone what is seldom filled in is one tap away, and open where something in it is wrong. */
export function foldOn(
  context: CallContext,
  shown: FormState,
  names: readonly string[],
): Pick<FormGroup, 'fold'> {
  if (context.side === 'desk') return {};
  return { fold: isFaulty(shown, names) ? 'open' : 'shut' };
}

const AS_REST = { first: 'As the rest', optional: true };

/** The dial of the sheet; left out, turns are counted on that of the newest set-up. */
function dialField({ setUps }: CallContext, shown: FormState): Component {
  const newest = newestDial(setUps);
  return quantityField(shown, 'perTurn', HOW.perTurn, 'length', {
    optional: true,
    hint:
      newest === undefined
        ? inSpoken('For readings in turns: “5 turns 66”. .100 on the usual dial.')
        : `For readings in turns. Left out: ${formatQuantity({ value: newest.value, unit: newest.unit })}, as the newest set-up.`,
  });
}

/** How the readings were taken, column by column where one was read in another way. */
export function howGroup(
  context: CallContext,
  shown: FormState,
  more: readonly Component[] = [],
  { folded = false } = {},
): FormGroup {
  const said = (shown.typed.spring ?? 'not-said') !== 'not-said';
  const names = Object.keys(HOW);
  return {
    legend: 'How it was read',
    columns: true,
    // The way of reading is asked for until it was said once; from then on it goes along.
    ...(said
      ? folded
        ? { fold: isFaulty(shown, names) ? 'open' : 'shut' }
        : foldOn(context, shown, names)
      : {}),
    slots: [
      selectField(shown, 'spring', HOW.spring, SPRINGS),
      selectField(shown, 'lifter', HOW.lifter, LIFTERS),
      selectField(shown, 'tool', HOW.tool, TOOLS),
      selectField(shown, 'columns.lobe-lift.tool', HOW['columns.lobe-lift.tool'], TOOLS, AS_REST),
      selectField(shown, 'columns.gaps.tool', HOW['columns.gaps.tool'], TOOLS, AS_REST),
      dialField(context, shown),
      selectField(shown, 'arms', HOW.arms, armsOf(context, shown)),
      ...more,
    ],
  };
}

/** For a reading that is typed in later than it was taken: the arm that sat there then. */
export function armField({ arms, now }: CallContext, shown: FormState): Component[] {
  if (arms.length === 0) return [];
  const seats = new Map(now.map((placement) => [placement.armId, valveName(placement)]));
  const names = Object.fromEntries(
    arms.map(({ id, name }) => [id, `${name}, on ${seats.get(id) ?? 'no valve'} now`]),
  );
  return [
    selectField(shown, 'armId', 'Arm on it when it was read', names, {
      first: 'The one that sits there now',
      optional: true,
    }),
  ];
}

/** The way the last readings were taken is the likely way of the next. */
export function lastHow(context: CallContext): Record<string, string> {
  const { record } = context;
  const now = isStopped(context) ? { arms: 'before' } : {};
  const last =
    record.sheetReadings.findLast(({ kind }) => kind === 'valve-lift') ?? record.sheetReadings.at(-1);
  if (last === undefined) return now;
  const { spring, lifter, tool, arms } = last;
  const lobe = record.sheetReadings.findLast(({ kind }) => kind === 'lobe-lift')?.tool;
  return {
    spring,
    lifter,
    tool,
    arms,
    ...(lobe === undefined || lobe === tool ? {} : { 'columns.lobe-lift.tool': lobe }),
    ...now,
  };
}
