import { isDial } from '../../kit/lift-tools.ts';
import { listed, placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { GroupExplained } from '../ratio/compared/explain.ts';
import { wasRead } from '../ratio/compared/lacking.ts';
import type { LackCode } from '../ratio/read/lack.ts';
import { lobePassesWanted, passToRead } from '../ratio/read/lobe-passes.ts';
import { type SetUpNow, setUpSubject } from '../ratio/read/set-ups.ts';
import { MUST_TURN, type Need, need } from './need.ts';
import { passesLeft } from './passes-left.ts';

/** A lifter that cannot sink; without pushrods there is none. */
const isFirm = ({ engine: { gear = 'pushrod' } }: Evidence, { lifter }: SetUpNow): boolean =>
  lifter === 'solid' || lifter === 'locked' || (gear !== 'pushrod' && lifter === 'not-said');

/** It was set up as the lack wants it: the passes that it has not got yet are all that is lacking. */
function isMetBy(evidence: Evidence, setUp: SetUpNow, code: LackCode): boolean {
  const { spring, lifter, lash, alignment, restsOn } = setUp;
  const firm = isFirm(evidence, setUp);
  // What nobody said of it may be as little what is wanted as what was there before.
  const said = firm || lifter !== 'not-said';
  switch (code) {
    case 'light-spring-first':
      return spring === 'light' && firm && lash === 'zero';
    case 'sinking':
    case 'may-have-sunk':
      return firm;
    case 'lash-in-known':
    case 'lash-in-unknown':
      return said && lash === 'zero';
    case 'plunger-leans':
      return said && alignment === 'parallel';
    default:
      return code === 'rests-elsewhere' && said && restsOn === 'retainer-flat';
  }
}

interface Started {
  readonly setUp?: SetUpNow;
  /** What its passes will bring. */
  readonly meets: (lack: { readonly code: LackCode }) => boolean;
}

/** The set-up that was begun last, while no lift was read in it. */
export function startedFor(evidence: Evidence, { known }: GroupExplained): Started {
  const last = known.at(-1);
  if (last === undefined || wasRead(last)) return { meets: () => false };
  const { setUp } = last.read;
  return { setUp, meets: ({ code }) => isMetBy(evidence, setUp, code) };
}

/** ` which has the light spring and solid lifter, at zero lash`: as much of it as was said. */
function hasSaid({ spring, lifter, lash }: SetUpNow): string {
  const has = [
    ...(spring === 'light' ? ['light spring'] : []),
    ...(lifter === 'not-said' ? [] : [`${lifter} lifter`]),
  ];
  return [
    ...(has.length === 0 ? [] : [`which has the ${listed(has)}`]),
    ...(lash === 'zero' ? ['at zero lash'] : []),
  ]
    .map((each) => `, ${each}`)
    .join('');
}

/** Nobody is sent to set up once more what is set up already. */
export function goOn({ group, known }: GroupExplained, setUp: SetUpNow): Need {
  const { id, number, tool } = setUp;
  const at = placeOf(group);
  const read = known.find((each) => each.read.setUp.id === id)?.read;
  const reads = read === undefined ? 'valve-lift' : passToRead(read);
  const lift = reads === 'lobe-lift' ? 'lobe lift' : 'valve lift';
  const left =
    read !== undefined && reads === 'lobe-lift' ? lobePassesWanted(read) - read.lobe.entryIds.length : 3;
  return need(
    `go-on:${group.key}`,
    `${lift} ${at}: passes of set-up ${number}`,
    `${at}: go on with set-up ${number}${hasSaid(setUp)}: read the ${lift}, ${passesLeft(left)}${isDial(tool) ? ', small hand first' : ''}.`,
    false,
    { ...MUST_TURN, begun: true, about: setUpSubject(setUp), reads },
  );
}
