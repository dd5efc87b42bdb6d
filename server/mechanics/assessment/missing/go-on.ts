import { isDial } from '../../kit/lift-tools.ts';
import { placeOf } from '../common/said.ts';
import type { GroupExplained } from '../ratio/explain.ts';
import type { RatioLack } from '../ratio/lack.ts';
import { wasRead } from '../ratio/lacking.ts';
import type { SetUpNow } from '../ratio/set-ups.ts';
import { MUST_TURN, type Need, need } from './need.ts';

/** It was set up as the lack wants it: the passes that it has not got yet are all that is lacking. */
function isMetBy({ spring, lifter, lash, alignment }: SetUpNow, { code }: RatioLack): boolean {
  const isFirm = lifter === 'solid' || lifter === 'locked';
  if (code === 'light-spring-first') return spring === 'light' && isFirm && lash === 'zero';
  if (code === 'sinking' || code === 'may-have-sunk') return isFirm;
  if (code === 'lash-in-known' || code === 'lash-in-unknown') return lash === 'zero';
  return code === 'plunger-leans' && alignment === 'parallel';
}

interface Started {
  readonly setUp?: SetUpNow;
  /** What its passes will bring. */
  readonly meets: (lack: RatioLack) => boolean;
}

/** The set-up that was begun last, while no lift was read in it. */
export function startedFor({ known }: GroupExplained): Started {
  const last = known.at(-1);
  if (last === undefined || wasRead(last)) return { meets: () => false };
  const { setUp } = last.read;
  return { setUp, meets: (lack) => isMetBy(setUp, lack) };
}

/** Nobody is sent to set up once more what is set up already. */
export function goOn({ group }: GroupExplained, { number, spring, lifter, lash, tool }: SetUpNow): Need {
  const at = placeOf(group);
  const on = [...(spring === 'light' ? ['light spring'] : []), `${lifter} lifter`].join(' and ');
  return need(
    `go-on:${group.key}`,
    `valve lift ${at}: passes of set-up ${number}`,
    `${at}: go on with set-up ${number}, which has the ${on}${lash === 'zero' ? ', at zero lash' : ''}: read the valve lift, three passes${isDial(tool) ? ', small hand first' : ''}.`,
    false,
    { ...MUST_TURN, begun: true },
  );
}
