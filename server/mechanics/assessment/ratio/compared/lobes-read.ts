import { inDoubt } from '../../common/asked.ts';
import type { PassEvidence, ValvePlace } from '../../evidence.ts';
import { foundLack } from '../asked/conditions.ts';
import { answerLack, type RatioLack } from '../read/lack.ts';
import type { SetUpKnown } from './known.ts';

/** Doubts about the very passes that the lobe is read by: till they are answered nothing stands on it. */
export const doubtsOfLobe = ({ read, questions }: SetUpKnown): RatioLack[] =>
  questions
    .filter((each) => inDoubt(each) && each.restsOn.some((id) => read.lobe.entryIds.includes(id)))
    .map((each) => (each.answered?.found === true ? foundLack(each, read) : answerLack(each)));

/** A lobe that was read at the lifter in a set-up, with nothing in doubt about it. */
export interface LobeOfSetUp extends ValvePlace {
  readonly value: number;
  readonly half: number;
  readonly passes: readonly PassEvidence[];
}

/** Lobes of set-ups that others may be set against, in the order of the set-ups; a caliper’s read low and a guess is none. */
export const lobesOfSetUps = (known: readonly SetUpKnown[]): LobeOfSetUp[] =>
  known.flatMap((each) => {
    const { lobe, setUp } = each.read;
    const isRead = lobe.source === 'indicator' && lobe.from === undefined && setUp.lobeSource !== 'guess';
    if (!isRead || lobe.value === undefined || lobe.value <= 0) return [];
    if (lobe.lacks.length > 0 || doubtsOfLobe(each).length > 0 || each.differs?.now === 'aside') return [];
    const { cylinder, valve, lobeErrorLimit } = setUp;
    return [{ cylinder, valve, value: lobe.value, half: lobeErrorLimit, passes: lobe.passes.used }];
  });
