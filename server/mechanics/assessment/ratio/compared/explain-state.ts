import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { Evidence } from '../../evidence.ts';
import type { SetUpNow } from '../read/set-ups.ts';
import type { Group } from './groups.ts';

/** What the inference is told of all readings together, and which of them it does not hold for. */
export interface StateGiven {
  readonly lash?: 'zero' | 'set';
  readonly lashSetting?: number;
  readonly alignment?: 'parallel' | 'leaning';
  /** The lash was out for this set-up, where it was not for all. */
  readonly lashSet: (setUp: SetUpNow) => boolean;
  readonly aligned: (setUp: SetUpNow) => boolean;
}

/** The worst state that any set-up with a lift was in; the others carry that it was put right for them. */
export function stateOf(evidence: Evidence, group: Group): StateGiven {
  const setUps = [...group.own, ...group.elsewhere].filter(({ standing }) =>
    standing.some(({ kind }) => kind === 'valve-lift' || kind === 'valve-lift-at'),
  );
  const lashes = setUps.map(({ setUp }) => setUp.lash);
  const lash = lashes.includes('set') ? 'set' : lashes.includes('not-said') ? undefined : 'zero';
  const stands = setUps.map(({ setUp }) => setUp.alignment);
  const alignment = stands.includes('leaning')
    ? 'leaning'
    : stands.includes('not-said')
      ? undefined
      : 'parallel';
  const settings = setUps.filter(({ setUp }) => setUp.lash === 'set').map(({ setUp }) => setUp.lashSetting);
  const setting =
    settings.findLast((each) => each !== undefined) ?? evidence.card[sideOfValve(group.valve)].lash;
  return {
    ...(lash === undefined ? {} : { lash }),
    ...(lash === 'set' && setting !== undefined && setting > 0 ? { lashSetting: setting } : {}),
    ...(alignment === undefined ? {} : { alignment }),
    lashSet: (setUp) => lash !== 'zero' && setUp.lash === 'zero',
    aligned: (setUp) => alignment !== 'parallel' && setUp.alignment === 'parallel',
  };
}
