import type { Component } from '../../../views/parts/part.ts';
import type { CallContext } from '../../call/context.ts';
import type { Working } from '../../records/workings/workings.ts';
import { chainOf, degreesText, type KeptPeak } from './timing-chain.ts';

/** A centreline outside of these is asked about: trade practice, common, no published source. */
const USUAL_PEAK = { from: 95, to: 120 } as const;

const notice = (text: string, link?: { href: string; label: string }): Component => ({
  template: '/parts/notice',
  data: { text, ...(link === undefined ? {} : { link }) },
});

const partLink = (context: CallContext, part: string, label: string) => ({
  href: `${context.base}/steps/timing?of=${part}`,
  label,
});

/** What two readings at the stop say of the pointer. */
export function stopFollowUp(context: CallContext, workings: readonly Working[]): Component[] {
  const { stop } = chainOf(workings);
  if (stop === undefined) return [];
  const off = degreesText(Math.abs(stop.correction));
  const next = partLink(context, 'centreline', 'Next: the centreline');
  if (stop.correction === 0) return [notice('Alike on both sides: the pointer stands right.', next)];
  const toward = stop.correction > 0 ? 'after TDC' : 'before TDC';
  return [
    notice(
      `Move the pointer ${off}° toward the side ${toward} and read both again until they are alike. Or leave it: the next forms then take ${off}° ${stop.correction > 0 ? 'off' : 'on to'} what is read after TDC. Take the stop out.`,
      next,
    ),
  ];
}

const told = ({ side, centreline }: KeptPeak): string =>
  `The ${side} peaks ${degreesText(centreline)}° ${side === 'intake' ? 'after' : 'before'} TDC`;

/** Which gap it takes from, in the words of the trade, and that it is read again rather than calculated. */
function costSaid(context: CallContext, peak: KeptPeak): Component[] {
  const { advance, costs } = peak;
  if (advance === undefined || costs === undefined) return [];
  if (costs === 'neither') return [notice(`${told(peak)}: straight up, as the card has it.`)];
  const early = advance > 0;
  const text = `${told(peak)}: ${degreesText(Math.abs(advance))}° ${early ? 'advanced' : 'retarded'} against the card. ${early ? 'Advance' : 'Retard'} costs ${costs} gap to the piston: measure that gap again at this timing.`;
  return [notice(text, { href: `${context.base}/steps/consequences`, label: 'The gaps to the piston' })];
}

function peakQuestions(peak: KeptPeak): Component[] {
  const { side, centreline, durationOverCard } = peak;
  const at = `${side}-${peak.duration === undefined ? 'peak' : 'events'}`;
  const cards = [
    ...(centreline < USUAL_PEAK.from || centreline > USUAL_PEAK.to
      ? [
          {
            id: `question-centreline-${at}`,
            about: `${side} lobe`,
            words: 'Was each reading told from the right side of its dead centre, and on the right lobe?',
            size: `${degreesText(centreline)}° is outside of the usual ${USUAL_PEAK.from} to ${USUAL_PEAK.to}.`,
            test: 'turn to the peak by the indicator, and look where the wheel stands.',
            answers: [],
          },
        ]
      : []),
    ...(durationOverCard !== undefined && Math.abs(durationOverCard) > 2
      ? [
          {
            id: `question-duration-${at}`,
            about: `${side} lobe`,
            words: 'Were both events read at the lift the card states, and each told from its right side?',
            size: `The duration is ${degreesText(Math.abs(durationOverCard))}° ${durationOverCard > 0 ? 'over' : 'under'} the card’s; a side swapped is twice its angle.`,
            test: 'read both again, coming up to the lift in running direction.',
            answers: [],
          },
        ]
      : []),
  ];
  return cards.map((data): Component => ({ template: '/parts/question', data }));
}

/** Which kept line a figure came from, where the pointer was left. */
function rightedSaid(workings: readonly Working[], peak: KeptPeak): Component[] {
  const { stop } = chainOf(workings.filter(({ seq }) => seq < peak.working.seq));
  if (!peak.righted || stop === undefined) return [];
  return [
    notice(
      `The ${degreesText(stop.correction)}° of line ${stop.working.seq} were taken off what was read after TDC.`,
    ),
  ];
}

/** Two ways to one centreline that differ say that the lobe is not symmetric, or that a reading is off. */
function twoWays(workings: readonly Working[], peak: KeptPeak): Component[] {
  const { peaks, events } = chainOf(workings);
  const other = (peak.duration === undefined ? events : peaks).find(({ side }) => side === peak.side);
  if (other === undefined || Math.abs(other.centreline - peak.centreline) <= 2) return [];
  return [
    notice(
      `By the other way, line ${other.working.seq}, it is ${degreesText(other.centreline)}°. An asymmetric lobe does that, and so does a reading taken the wrong way round.`,
    ),
  ];
}

/** What a kept centreline or pair of events says, which gap it costs, and where it leads. */
export function peakFollowUp(
  context: CallContext,
  part: 'centreline' | 'events',
  workings: readonly Working[],
  last: Working,
): Component[] {
  const chain = chainOf(workings);
  const peak = [...chain.peaks, ...chain.events].find(({ working }) => working.id === last.id);
  if (peak === undefined) return [];
  return [
    ...costSaid(context, peak),
    ...rightedSaid(workings, peak),
    ...peakQuestions(peak),
    ...twoWays(workings, peak),
    ...(part === 'centreline'
      ? [notice('Next, where it opens and closes.', partLink(context, 'events', 'Opening and closing'))]
      : []),
  ];
}
