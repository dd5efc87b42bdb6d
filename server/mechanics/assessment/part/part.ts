import { computation as coverRoom } from '../../computations/cover-room.ts';
import { computation as fastenerForHole } from '../../computations/fastener-for-hole.ts';
import { defaultLimit, limitSource } from '../../kit/limits.ts';
import type { Headline, Judgement, Subject } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import type { PartSaid } from '../common/part-said.ts';
import { byId, listed } from '../common/said.ts';
import type { Evidence, PartEvidence } from '../evidence.ts';
import type { PartDetail } from './detail.ts';
import { partDoubts } from './questions.ts';

const PART: Subject = { of: 'part' };
const COVER = 'part:cover-sideways';

type Hole = PartDetail['holes'][number];

function holeOf({ id, kind, readAs, size }: PartEvidence): Hole[] {
  if (kind !== 'hole-across-trunnion' || size === undefined) return [];
  const { fasteners, ask } = fastenerForHole.compute({ hole: size });
  const threads = fasteners.flatMap(({ designation, fit }) =>
    fit === 'differs' ? [] : [{ designation, fit }],
  );
  return [{ entryId: id, readAs, threads, ...(ask === undefined ? {} : { ask }) }];
}

/** Sideways room by the widest reading: of several widths the worst one stands. */
function coverOf({ engine }: Evidence, readings: readonly PartEvidence[]): PartDetail['cover'] {
  const widths = readings.filter(({ kind, size }) => kind === 'width-across-trunnion' && size !== undefined);
  const widest = widths.toSorted((a, b) => (b.size ?? 0) - (a.size ?? 0))[0];
  if (widest?.size === undefined || engine.coverBolting === undefined) return undefined;
  const { verdict, reason, settledBy } = coverRoom.compute({
    coverBolting: engine.coverBolting,
    assemblyWidth: widest.size,
  });
  return { entryId: widest.id, readAs: widest.readAs, word: verdict, reason, settledBy, judgementId: COVER };
}

function coverJudgement(cover: PartDetail['cover']): Judgement[] {
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

/** The hole suggests a fastener; its thread decides. */
function holeHeadline(holes: readonly Hole[]): Headline[] {
  const named = holes.flatMap(({ threads }) => {
    const agreeing = threads.filter(({ fit }) => fit === 'agrees');
    return (agreeing.length > 0 ? agreeing : threads).map(({ designation }) => designation);
  });
  const once = [...new Set(named)].sort();
  if (once.length === 0) return [];
  return [
    {
      id: 'headline:part:fastener',
      about: PART,
      step: 'identify',
      sentence: `The hole suggests ${listed(once).replace(' and ', ' or ')}; the thread proves it.`,
    },
  ];
}

/** What the part in the hand says by itself; its ranking against the catalogue is made where the catalogue is. */
export function partPart(evidence: Evidence): PartSaid<PartDetail> {
  const readings = evidence.part.filter(({ standing }) => standing).toSorted(byId);
  const holes = readings.flatMap(holeOf);
  const cover = coverOf(evidence, readings);
  const judgements = coverJudgement(cover);
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
    detail: { holes, ...(cover === undefined ? {} : { cover }) },
  };
}
