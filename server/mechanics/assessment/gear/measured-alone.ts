import type { Headline } from '../assessment.ts';
import type { Evidence, LobeCard } from '../evidence.ts';

const isPushrod = ({ engine }: Evidence): boolean => (engine.gear ?? 'pushrod') === 'pushrod';

const withoutLift = ({ valveLift: _, ...card }: LobeCard): LobeCard => card;

/** What a change is worked out from: of an overhead cam only the gaps that were measured, since no one ratio makes the others. */
export function forChange(evidence: Evidence): Evidence {
  if (isPushrod(evidence)) return evidence;
  const { intake, exhaust } = evidence.card;
  const { pivotToTip } = evidence.rockers;
  return {
    ...evidence,
    card: { intake: withoutLift(intake), exhaust: withoutLift(exhaust) },
    rockers: pivotToTip === undefined ? {} : { pivotToTip },
    taken: { intake: {}, exhaust: {} },
  };
}

/** Gaps of an engine without that step are told where they are read. */
export const whereTold = (evidence: Evidence, headlines: readonly Headline[]): readonly Headline[] =>
  isPushrod(evidence)
    ? headlines
    : headlines.map((each) => (each.step === 'consequences' ? { ...each, step: 'sheet' } : each));
