import { type Registered, register } from '../../../server/compute/registry.ts';
import type { PreloadEvidence } from '../../../server/mechanics/assessment/evidence/kept-sums.ts';
import type { Evidence, WorkingEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { computation } from '../../../server/mechanics/computations/lifter-preload.ts';
import { seatPerAdvance } from '../../../server/mechanics/threads/adjuster-screw.ts';
import type { Working } from '../../../server/records/workings/workings.ts';
import { entry, inches } from './stored.ts';

const preload: Registered = computation.open(register);

const inputsOf = ({ thread, pitch, mount, ratio, preload: pressed, travel }: PreloadEvidence) => ({
  thread,
  mount,
  ratio,
  turns: pressed / pitch / seatPerAdvance(mount, ratio),
  ...(travel === undefined ? {} : { liftersTravel: inches(travel).readAs }),
});

function working({ id, line, set }: WorkingEvidence): Working[] {
  if (set?.of !== 'preload') return [];
  const inputs = inputsOf(set);
  const answer = preload.run(inputs, 'inch');
  return [
    {
      ...entry({ id, line, standing: true }),
      computation: preload.name,
      inputs,
      answer,
      revision: 1,
    },
  ];
}

/** The sums of the evidence whose inputs can be told from it: those of a preload. */
export const workings = (evidence: Evidence): Working[] => evidence.workings.flatMap(working);
