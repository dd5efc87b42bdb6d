import { defined } from '../../../../shared/defined.ts';
import type { AssessedQuestion } from '../assessment.ts';
import type { RankingDetail } from './detail.ts';
import type { Ranking } from './ranking.ts';
import { tellOf, waitingTell } from './tell.ts';

/**
 * What the faces get of the ranking. While the headline names no family, no chance stands anywhere, nor what the first
 * family would mean: a figure or a stud beside it would be heard as the name that is held back.
 */
export function rankingTold(
  ranking: Ranking,
  told: boolean,
  first: AssessedQuestion | undefined,
): RankingDetail {
  const { families, counted, kinds, candidates, noneOfThese, offers, implied } = ranking;
  return {
    families,
    counted,
    kinds,
    told,
    candidates: candidates.map(({ family, reasons, chance }) => ({
      family,
      reasons,
      ...defined({ chance: told ? chance : undefined }),
    })),
    ...defined({ noneOfThese: told ? noneOfThese : undefined }),
    offers,
    tell: first === undefined ? tellOf(ranking, told) : waitingTell(first.test),
    implied: told ? implied : [],
  };
}
