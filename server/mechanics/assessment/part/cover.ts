import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { COVER_HEIGHT, computation as coverRoom } from '../../computations/cover-room.ts';
import { halfWidthOf } from '../../identify/how-read.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import { defaultLimit, limitSource } from '../../kit/limits.ts';
import { IN } from '../../kit/si.ts';
import type { AssessedQuestion, Judgement } from '../assessment.ts';
import { subjectSaid, upperFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { CoverDetail, PartDetail } from './detail.ts';
import { type CountedReading, sized } from './doubts.ts';
import type { InHand } from './in-hand.ts';
import { ordinaryWidths } from './ordinary.ts';

const KIND = 'width-across-trunnion';

/** An assembly is narrow, or wide, as far as its width agrees with one; between them the cover is measured. */
function limits(): { readonly narrowUpTo: number; readonly wideFrom: number } {
  const { agrees } = IDENTIFICATION_MODEL.sizes[KIND];
  const made = ordinaryWidths();
  return {
    narrowUpTo: Math.min(defaultLimit('narrow-assembly-up-to'), Math.min(...made) + agrees.above * IN),
    wideFrom: Math.max(defaultLimit('wide-assembly-from'), Math.max(...made) - agrees.below * IN),
  };
}

/** Rings and width that do not go together: one of the two was misread, and no room is told by either. */
const inDoubt = (questions: readonly AssessedQuestion[], id: string): boolean =>
  questions.some(
    ({ code, answered, restsOn }) =>
      code === 'rings-against-width' && answered === undefined && restsOn.includes(id),
  );

/** Sideways room by the widest reading: of several widths the worst one stands. */
export function coverOf(
  { engine }: Evidence,
  { key }: InHand,
  readings: readonly CountedReading[],
  questions: readonly AssessedQuestion[],
): Pick<PartDetail, 'cover' | 'coverLacks'> {
  const widest = sized(readings, KIND).toSorted((a, b) => b.size - a.size)[0];
  if (widest === undefined) return {};
  const { coverBolting } = engine;
  if (coverBolting === undefined)
    return { coverLacks: 'Not yet: say on “Engine and springs” how the valve cover is bolted.' };
  if (inDoubt(questions, widest.id))
    return { coverLacks: 'Not yet: rings and width do not go together. Say which of the two was misread.' };
  const within = halfWidthOf(widest);
  const at = (assemblyWidth: number) => coverRoom.compute({ coverBolting, assemblyWidth, limits: limits() });
  const [low, middle, high] = [at(widest.size - within), at(widest.size), at(widest.size + within)];
  const told = low.verdict === high.verdict;
  return {
    cover: {
      entryId: widest.id,
      readAs: widest.readAs,
      word: told ? middle.verdict : 'close',
      reason: told ? middle.reason : 'by how far off the reading may be, it can be on either side',
      // Width and cover are on record: by them it is told.
      settledBy: told && middle.verdict !== 'close' ? upperFirst(COVER_HEIGHT) : middle.settledBy,
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
        limit: limits().narrowUpTo,
        source: limitSource('narrow-assembly-up-to'),
      },
      word: cover.word,
      sentence: about.name === undefined ? upperFirst(said) : `${upperFirst(subjectSaid(about))}: ${said}`,
      lacks: [cover.settledBy],
      restsOn: [cover.entryId],
    },
  ];
}
