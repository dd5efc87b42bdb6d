import { defined } from '../../../shared/defined.ts';
import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { turnsOf } from '../../../shared/quantities/dial-words.ts';
import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import { inches } from '../../../shared/schemas/entered.ts';
import type { Component } from '../../../views/parts/components.ts';
import { readingWords } from '../../call/reading-text.ts';
import { dial } from '../../drawings/dial.ts';
import { rulerOf } from '../../drawings/drawing.ts';
import { isDial, isLobeTool } from '../../mechanics/kit/lift-tools.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import { dialUnit } from './reading-form.ts';

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
  {
    id = 'dial',
    followed,
    field = 'reading-f-peak',
    heading,
  }: {
    readonly id?: string;
    readonly followed?: string;
    /** The field that is typed in beside it. */
    readonly field?: string;
    readonly heading?: string;
  } = {},
): Component | undefined {
  const lift = inches(reading.peak);
  const perTurn = inches(setUp.method.perTurn);
  const { tool, lobeSource } = setUp.method;
  const byDial = reading.kind.endsWith('lobe-lift') ? !isLobeTool(lobeSource) : isDial(tool);
  if (lift < 0 || !byDial) return undefined;
  const runs = runsAt(reading.kind);
  const start = startOf(setUp, reading.kind);
  const follows =
    followed === reading.kind
      ? {
          field,
          runs,
          perTurn,
          gone: lift,
          ...start,
          unit: dialUnit(setUp),
          speaks: spokenUnits(),
        }
      : undefined;
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
      heading: heading ?? 'The last pass on the dial',
      drawing,
      ...defined({ follows }),
      reading: `${readingWords(reading)}: ${asEntered(reading.peak.readAs)}`,
    },
  };
}
