import { z } from 'zod';
import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { turnText } from '../../drawings/turn-text.ts';
import { ADJUSTER_WORDS } from '../../mechanics/lash/adjuster-words.ts';
import type { Working } from '../../records/workings/workings.ts';
import { factsComponent } from '../../web/components.ts';

const kept = z.object({ result: z.object({ turns: z.number() }) });

/** `loosen .25 turn: 90°, 1.5 flats`, of an answer of the adjuster that was kept. */
export function turnAsked({ answer, computation }: Working): string | undefined {
  if (computation !== 'adjuster') return undefined;
  const read = kept.safeParse(answer);
  return read.success ? turnText(read.data.result.turns) : undefined;
}

/** The turn of the last line kept, above its figures: what somebody at the engine does next, so not under a stop. */
export function turnComponents({ assessment }: CallContext, working: Working): Component[] {
  const turn = turnAsked(working);
  if (turn === undefined || assessment.stop.length > 0) return [];
  if (assessment.details.workings.turnToMake !== working.id) return [];
  return [
    factsComponent({
      block: true,
      items: [
        {
          label: 'Turn',
          value: turn,
          note: `the ${ADJUSTER_WORDS[assessment.details.lash.adjuster].turned} itself; a flat is 60°`,
        },
      ],
    }),
  ];
}
