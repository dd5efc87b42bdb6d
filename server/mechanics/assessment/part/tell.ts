import { formatQuantity } from '../../../../shared/quantities/format.ts';
import { isPartSize, PART_FEATURES, PART_SIZES } from '../../../../shared/schemas/part-words.ts';
import type { PartKind } from '../../identify/kinds.ts';
import type { Offer } from '../../identify/types.ts';
import { IN } from '../../kit/si.ts';
import type { NextAction } from '../assessment.ts';
import { nominalSaid, upperFirst } from '../common/said.ts';
import { shareSaid } from './chance.ts';
import type { CandidateDetail, RankingDetail, TellDetail } from './detail.ts';

/** A gain below this is not worth walking to the bench for. */
const WORTH_IT = 0.02;
/** Above this the part is named, and no ratio is read only to name it. */
const NAMED = 0.9;
/** A family below this is no rival of the first. */
const RIVAL = 0.05;

const NAMES = { ...PART_SIZES, ...PART_FEATURES };

const thingSaid = (kind: PartKind): string =>
  isPartSize(kind) ? NAMES[kind].toLowerCase() : `the ${NAMES[kind].toLowerCase()}`;

/** A size of the catalogue, with no fewer places than it is written with. */
const sizeSaid = (si: number): string => formatQuantity({ value: Number((si / IN).toFixed(4)), unit: 'in' });

/** What parts the two families that stand first, by the catalogue. */
function partedBy([first, second]: readonly CandidateDetail[], kind: PartKind): string {
  if (first === undefined || second === undefined || !isPartSize(kind)) return '';
  const [one, other] = [first.family.sizes[kind], second.family.sizes[kind]];
  if (one === undefined || other === undefined || one === other) return '';
  return `${first.family.name} is made with ${sizeSaid(one)}, ${second.family.name} with ${sizeSaid(other)}.`;
}

/** The two that stand first, where nothing but their nominal ratio parts them. */
function partedByRatio([first, second]: readonly CandidateDetail[]): string | undefined {
  const [one, other] = [first?.family.nominalRatio, second?.family.nominalRatio];
  if (first === undefined || second === undefined || one === undefined || other === undefined)
    return undefined;
  if (one === other || second.probability < RIVAL) return undefined;
  return `${first.family.name} is nominally ${nominalSaid(one)}, ${second.family.name} ${nominalSaid(other)}.`;
}

/** The measurement that settles most, with its reason in figures; where none does, the ratio on the engine may. */
export function tellOf(
  candidates: readonly CandidateDetail[],
  noneOfThese: number,
  [offer]: readonly Offer[],
): TellDetail {
  const now = Math.max(noneOfThese, candidates[0]?.probability ?? 0);
  if (offer !== undefined && offer.rightFirst >= now + WORTH_IT)
    return {
      kind: offer.kind,
      sentence: `${upperFirst(thingSaid(offer.kind))} would tell most: it would raise the chance of naming the part right from ${shareSaid(now)} to ${shareSaid(offer.rightFirst)}.`,
      parted: partedBy(candidates, offer.kind),
      byRatio: false,
    };
  const ratio = partedByRatio(candidates);
  if (ratio !== undefined && now < NAMED)
    return {
      sentence: 'No further size parts the two that stand first; the ratio on the engine does.',
      parted: ratio,
      byRatio: true,
    };
  return {
    sentence:
      'Nothing that is left to measure would change the first name by much. The ratio is still unknown until a valve moves.',
    parted: '',
    byRatio: true,
  };
}

/** The measurement that settles most as something to do; the part is off the engine, and nothing turns for it. */
export function measureNext(ranking: RankingDetail | undefined): NextAction | undefined {
  const kind = ranking?.tell.kind;
  if (ranking === undefined || kind === undefined || ranking.counted === 0) return undefined;
  return {
    id: `next:part:${kind}`,
    action: kind,
    step: 'identify',
    about: { of: 'part' },
    sentence: `${isPartSize(kind) ? 'Measure' : 'Look at'} ${thingSaid(kind)} of the part.`,
    reason: ranking.tell.sentence,
    turns: false,
  };
}
