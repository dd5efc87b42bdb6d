import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { isLobeTool } from '../../../kit/lift-tools.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import type { LobeDetail } from './detail.ts';
import type { RatioLack } from './lack.ts';
import { meanOf, standingPasses, type UsedPasses, usedPasses } from './passes.ts';
import type { SetUpNow } from './set-ups.ts';

/** The lobe lift that a set-up works with. */
export interface LobeInUse extends LobeDetail {
  readonly passes: UsedPasses;
  readonly lacks: readonly RatioLack[];
}

const NO_PASSES: UsedPasses = { used: [], aside: [], lacks: [] };

const passesIn = (evidence: Evidence, setUp: SetUpNow): UsedPasses =>
  usedPasses(
    standingPasses(evidence, setUp.id).filter(({ kind }) => kind === 'lobe-lift'),
    setUp,
    'lobe',
    { within: setUp.lobeErrorLimit, dial: !isLobeTool(setUp.lobeSource) },
  );

/**
 * The set-up whose lobe passes serve: this one, or another of the same valve. Taken at the lifter's body they speak of
 * the lobe alone, whatever spring or lash the valve had (common practice, no published source).
 */
function whereRead(evidence: Evidence, setUp: SetUpNow, all: readonly SetUpNow[]) {
  const own = passesIn(evidence, setUp);
  if (own.used.length > 0) return { passes: own, from: undefined };
  const others = all.filter(
    (each) => each.id !== setUp.id && placeOf(each) === placeOf(setUp) && each.lobeSource !== 'caliper',
  );
  for (const from of others.toReversed()) {
    const passes = passesIn(evidence, from);
    if (passes.used.length > 0) return { passes, from };
  }
  return { passes: own, from: undefined };
}

/** A lobe lift that somebody stated is kept, and counts once it is known where it is from. */
function wanted(evidence: Evidence, setUp: SetUpNow): RatioLack {
  const stated = standingPasses(evidence, setUp.id).findLast(({ kind }) => kind === 'stated-lobe-lift');
  return stated === undefined
    ? { code: 'lobe-lift', valve: setUp.valve }
    : { code: 'lobe-lift-from', value: stated.value };
}

function ofCard(evidence: Evidence, setUp: SetUpNow): LobeInUse {
  const value = evidence.card[sideOfValve(setUp.valve)].lobeLift;
  const known = value !== undefined && value > 0;
  return {
    source: 'card',
    ...(known ? { value } : {}),
    entryIds: [],
    passes: NO_PASSES,
    lacks: known ? [] : [wanted(evidence, setUp)],
  };
}

/** A lobe that was read goes before the card, also where it was read after the card had been said. */
export function lobeOf(evidence: Evidence, setUp: SetUpNow, all: readonly SetUpNow[]): LobeInUse {
  const { passes, from } = whereRead(evidence, setUp, all);
  const read = passes.used.length > 0;
  if (setUp.lobeSource === 'card' && !read) return ofCard(evidence, setUp);
  return {
    source: setUp.lobeSource === 'caliper' && from === undefined ? 'caliper' : 'indicator',
    ...(read ? { value: meanOf(passes.used) } : {}),
    ...(from === undefined ? {} : { from: { setUpId: from.id, number: from.number } }),
    entryIds: passes.used.map(({ id }) => id),
    passes,
    lacks: read ? passes.lacks : [{ code: 'no-pass', lift: 'lobe' }],
  };
}
