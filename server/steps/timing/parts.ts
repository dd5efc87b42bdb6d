import type { CallContext } from '../../call/context.ts';
import type { Guide } from '../../call/forms.ts';
import { questionsNamed } from '../../call/question-form.ts';
import { TURNING_GUIDE } from '../../call/turning-guide.ts';
import { computedPart } from '../../call/worked/computed-part.ts';
import type { WorkedData, WorkedStep } from '../../call/worked/part.ts';
import { equalDrop } from '../../drawings/equal-drop.ts';
import { positiveStop } from '../../drawings/positive-stop.ts';
import { wheelAtStop, wheelEvents } from '../../drawings/wheel-asked.ts';
import type { Working } from '../../records/workings/workings.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import { peakFollowUp, stopFollowUp } from './follow-up.ts';
import { eventsForm } from './forms/events.ts';
import { peakForm } from './forms/peak.ts';
import { stopForm } from './forms/stop.ts';
import { type Chain, chainOf, degreesText, type KeptPeak } from './timing-chain.ts';

const newest = (peaks: Chain['peaks']): Working | undefined =>
  peaks
    .map(({ working }) => working)
    .sort((a, b) => a.seq - b.seq)
    .at(-1);

/** Where it peaks; what the card makes of that is the assessment’s to say. */
const peakText = ({ working, side, centreline }: KeptPeak): string =>
  `line ${working.seq}: ${side} ${degreesText(centreline)}°`;

function stopText(workings: readonly Working[]): string {
  const { stop } = chainOf(workings);
  if (stop === undefined) return '';
  const { working, isOut, correction } = stop;
  return `line ${working.seq}: the pointer ${isOut ? `is ${degreesText(Math.abs(correction))}° out` : 'stands right'}`;
}

const wheel = (typed: Fields) => [
  wheelEvents('asked-events', typed.side === 'exhaust' ? 'exhaust' : 'intake'),
];

/** A starter drives the piston into the stop: that is in sight before the stop goes in. */
const AT_THE_STOP: Guide = {
  ...TURNING_GUIDE,
  summary: 'Stop in: gently by hand, never the starter; take it out again',
};

const stop = computedPart<WorkedData>({
  name: 'top-dead-centre',
  title: 'Two readings at the stop',
  words: {
    say: 'What does the wheel read at the stop, turned one way, and turned the other?',
    how: 'Positive stop in, plugs out. Turn gently by hand to contact, one way and the other; never the starter. Take the stop out again.',
  },
  turns: true,
  guide: AT_THE_STOP,
  computation: 'top-dead-centre',
  form: stopForm,
  asked: () => [positiveStop('asked-stop'), wheelAtStop('asked-wheel')],
  kept: stopText,
  followUp: (context, workings) => stopFollowUp(context, workings),
});

const lobesApart = (context: CallContext) =>
  questionsNamed(context, context.assessment.details.timing.questionIds);

const centreline = computedPart<WorkedData>({
  name: 'centreline',
  title: 'Centreline by equal drop',
  words: {
    say: 'Indicator on the lifter: what does the wheel read .050 under the peak going up, and .050 under it going down?',
    how: 'Indicator on the lifter, zero at full lift. Turn in running direction, read the wheel at the same drop on either side.',
  },
  turns: true,
  computation: 'centreline',
  form: peakForm,
  asked: () => [equalDrop('asked-drop')],
  last: (workings) => newest(chainOf(workings).peaks),
  kept: (workings) => chainOf(workings).peaks.map(peakText).join('; '),
  questions: lobesApart,
  followUp: (context, workings, last) => peakFollowUp(context, 'centreline', workings, last),
});

const events = computedPart<WorkedData>({
  name: 'events',
  title: 'Opening and closing at .050',
  words: {
    say: 'Lifter at .050: where does it open, before or after which dead centre? And where does it close?',
    how: 'Turn in running direction until the lifter is at .050 and read the wheel; go on over the peak to .050 again.',
  },
  turns: true,
  computation: 'centreline',
  form: eventsForm,
  asked: wheel,
  last: (workings) => newest(chainOf(workings).events),
  kept: (workings) => chainOf(workings).events.map(peakText).join('; '),
  questions: lobesApart,
  followUp: (context, workings, last) => peakFollowUp(context, 'events', workings, last),
});

const wholeCam = computedPart<WorkedData>({
  name: 'cam-timing',
  title: 'Figures of a whole cam',
  words: {
    say: 'What does the card give for both lobes: events, or duration and centreline?',
    how: 'Copy both lobes from the card, all at the same lift.',
  },
  turns: false,
  computation: 'cam-timing',
  asked: wheel,
});

export const timing: WorkedStep<WorkedData> = {
  name: 'timing',
  parts: [stop, centreline, events, wholeCam],
  chained: true,
  opens: (_, loaded) => {
    const chain = [stop, centreline, events];
    return (chain.find((part) => part.kept(loaded) === '') ?? events).name;
  },
};
