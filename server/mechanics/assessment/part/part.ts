import { defined } from '../../../../shared/defined.ts';
import { computation as coverRoom } from '../../computations/cover-room.ts';
import { defaultLimit, limitSource } from '../../kit/limits.ts';
import type { Headline, Judgement, Subject } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import type { PartSaid } from '../common/part-said.ts';
import { byId } from '../common/said.ts';
import type { Evidence, PartEvidence } from '../evidence.ts';
import type { CoverDetail, PartDetail } from './detail.ts';
import { holeHeadline, holesOf } from './holes.ts';
import { partDoubts } from './questions.ts';
import { familyHeadline, rankingOf } from './ranking.ts';

const PART: Subject = { of: 'part' };
const COVER = 'part:cover-sideways';

/** Sideways room by the widest reading: of several widths the worst one stands. */
function coverOf(
  { engine }: Evidence,
  readings: readonly PartEvidence[],
): Pick<PartDetail, 'cover' | 'coverLacks'> {
  const widths = readings.filter(({ kind, size }) => kind === 'width-across-trunnion' && size !== undefined);
  const widest = widths.toSorted((a, b) => (b.size ?? 0) - (a.size ?? 0))[0];
  if (widest?.size === undefined) return {};
  if (engine.coverBolting === undefined)
    return { coverLacks: 'Not yet: say on “Engine and springs” how the valve cover is bolted.' };
  const { verdict, reason, settledBy } = coverRoom.compute({
    coverBolting: engine.coverBolting,
    assemblyWidth: widest.size,
  });
  return {
    cover: {
      entryId: widest.id,
      readAs: widest.readAs,
      word: verdict,
      reason,
      settledBy,
      judgementId: COVER,
    },
  };
}

function coverJudgement(cover: CoverDetail | undefined): Judgement[] {
  if (cover === undefined) return [];
  return [
    {
      id: COVER,
      about: PART,
      against: {
        to: 'limit',
        gap: 'cover',
        limit: defaultLimit('narrow-assembly-up-to'),
        source: limitSource('narrow-assembly-up-to'),
      },
      word: cover.word,
      sentence: `Sideways under the cover, ${cover.readAs} across: ${cover.word}; ${cover.reason}.`,
      lacks: [cover.settledBy],
      restsOn: [cover.entryId],
    },
  ];
}

/** What the part in the hand may be, which fastener it takes, what room it leaves, and what does not go together. */
export function partPart(evidence: Evidence): PartSaid<PartDetail> {
  const readings = evidence.part.filter(({ standing }) => standing).toSorted(byId);
  const holes = holesOf(readings);
  const cover = coverOf(evidence, readings);
  const ranking = rankingOf(readings, evidence.families);
  const judgements = coverJudgement(cover.cover);
  return {
    quantities: [],
    judgements,
    questions: partDoubts(readings).map((doubt) =>
      // Two stamps without a dot are two questions, though their words are the same.
      asked(doubt, {
        about: PART,
        step: 'identify',
        among: doubt.restsOn[0] ?? '',
        answers: evidence.answers,
      }),
    ),
    stop: [],
    headlines: [
      ...familyHeadline(ranking),
      ...holeHeadline(holes),
      ...judgements.map(
        ({ id, about, sentence }): Headline => ({
          id: `headline:${id}`,
          about,
          step: 'identify',
          sentence,
          judgementId: id,
        }),
      ),
    ],
    detail: { holes, ...cover, ...defined({ ranking }) },
  };
}
