import { defined } from '../../../shared/defined.ts';
import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { inches } from '../../../shared/schemas/entered.ts';
import type { Component } from '../../../views/parts/components.ts';
import { readingWords } from '../../call/reading-text.ts';
import { dial } from '../../drawings/dial.ts';
import { rulerOf } from '../../drawings/drawing.ts';
import { isDial, isLobeTool } from '../../mechanics/kit/lift-tools.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import { dialUnit } from './reading-form.ts';

/** Whole turns and what is left of one, in inches; a hair under a full turn counts as the turn. */
export function turnsOf(lift: number, perTurn: number): { turns: number; needle: number } {
  const turns = Math.floor(lift / perTurn + 1e-6);
  return { turns, needle: Math.max(0, lift - turns * perTurn) };
}

/** At the lifter the plunger goes in and the hand runs clockwise; at the retainer the valve moves away from it. */
export const runsAt = (kind: string): 'clockwise' | 'anticlockwise' =>
  kind.endsWith('lobe-lift') ? 'clockwise' : 'anticlockwise';

/** Where the small hand began: known at the valve alone, where the plunger was pushed in by as much as was said. */
function startOf({ method: { pushedIn, perTurn } }: SetUp, kind: string): { startedAt?: number } {
  if (pushedIn === undefined || kind.endsWith('lobe-lift')) return {};
  return { startedAt: inches(pushedIn) / inches(perTurn) };
}

/** The dial as it should look for a reading, to be held against the real one. `followed`: the kind that is typed beside it. */
export function dialComponent(
  setUp: SetUp,
  reading: Reading,
  { id = 'dial', followed }: { readonly id?: string; readonly followed?: string } = {},
): Component | undefined {
  const lift = inches(reading.peak);
  const perTurn = inches(setUp.method.perTurn);
  const { tool, lobeSource } = setUp.method;
  const byDial = reading.kind.endsWith('lobe-lift') ? !isLobeTool(lobeSource) : isDial(tool);
  if (lift < 0 || !byDial) return undefined;
  const runs = runsAt(reading.kind);
  const start = startOf(setUp, reading.kind);
  const small = start.startedAt === undefined ? ('up' as const) : ('with-the-hand' as const);
  const follows =
    followed === reading.kind ? { field: 'reading-f-peak', runs, turns: lift / perTurn, small } : undefined;
  const drawing = dial(
    {
      perTurn,
      graduation: inches(setUp.method.graduation),
      ...turnsOf(lift, perTurn),
      runs,
      ...start,
    },
    { id: `${id}-drawing`, ruler: rulerOf(dialUnit(setUp) === 'mm' ? 'metric' : 'inch') },
  );
  return {
    template: '/parts/dial',
    data: {
      id,
      heading: 'The dial should look like this',
      drawing,
      ...defined({ follows }),
      reading: `${readingWords(reading)}: ${asEntered(reading.peak.readAs)}`,
    },
  };
}
