import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { computation as coverRoom } from '../../computations/cover-room.ts';
import { halfWidthOf } from '../../identify/how-read.ts';
import { defaultLimit, limitSource } from '../../kit/limits.ts';
import type { Judgement } from '../assessment.ts';
import { subjectSaid, upperFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { CoverDetail, PartDetail } from './detail.ts';
import { type CountedReading, sized } from './doubts.ts';
import type { InHand } from './in-hand.ts';

/** Sideways room by the widest reading: of several widths the worst one stands. */
export function coverOf(
  { engine }: Evidence,
  { key }: InHand,
  readings: readonly CountedReading[],
): Pick<PartDetail, 'cover' | 'coverLacks'> {
  const widest = sized(readings, 'width-across-trunnion').toSorted((a, b) => b.size - a.size)[0];
  if (widest === undefined) return {};
  const { coverBolting } = engine;
  if (coverBolting === undefined)
    return { coverLacks: 'Not yet: say on “Engine and springs” how the valve cover is bolted.' };
  const within = halfWidthOf(widest);
  const at = (assemblyWidth: number) => coverRoom.compute({ coverBolting, assemblyWidth });
  const [low, middle, high] = [at(widest.size - within), at(widest.size), at(widest.size + within)];
  const told = low.verdict === high.verdict;
  return {
    cover: {
      entryId: widest.id,
      readAs: widest.readAs,
      word: told ? middle.verdict : 'close',
      reason: told ? middle.reason : 'by how far off the reading may be, it can be on either side',
      settledBy: middle.settledBy,
      judgementId: `${key}:cover-sideways`,
    },
  };
}

export function coverJudgement({ about }: InHand, cover: CoverDetail | undefined): Judgement[] {
  if (cover === undefined) return [];
  const said = `sideways under the cover, ${asEntered(cover.readAs)} across: ${cover.word}; ${cover.reason}.`;
  return [
    {
      id: cover.judgementId,
      about,
      against: {
        to: 'limit',
        gap: 'cover',
        limit: defaultLimit('narrow-assembly-up-to'),
        source: limitSource('narrow-assembly-up-to'),
      },
      word: cover.word,
      sentence: about.name === undefined ? upperFirst(said) : `${upperFirst(subjectSaid(about))}: ${said}`,
      lacks: [cover.settledBy],
      restsOn: [cover.entryId],
    },
  ];
}
