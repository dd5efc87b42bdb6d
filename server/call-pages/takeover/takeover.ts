import { speaking } from '../../../shared/quantities/spoken-units.ts';
import type { Page } from '../../web/pages/render.ts';
import { stopFlag, type WholeCall } from '../report/call-summary.ts';
import {
  callerCard,
  foundCard,
  goalCard,
  marksCard,
  missingCard,
  nextCard,
  notCoveredCard,
  photographsCard,
  promisesCard,
  rawCard,
  saidCard,
  swapsCard,
} from './cards.ts';

/** The call on one screen, for a colleague who takes it over. */
export const takeoverPage = (whole: WholeCall): Page =>
  speaking(whole.context.build.units, () => cardsOf(whole));

function cardsOf(whole: WholeCall): Page {
  const { context, frame } = whole;
  return {
    template: 'takeover',
    title: `Take over call ${context.call.number}`,
    place: '/calls',
    data: {
      back: context.base,
      title: `Take over call ${context.call.number}`,
      stop: stopFlag(context),
      cards: [
        callerCard(context),
        missingCard(frame, context),
        ...notCoveredCard(context),
        nextCard(whole),
        promisesCard(context),
        foundCard(whole),
        rawCard(whole),
        marksCard(whole),
        ...swapsCard(whole),
        photographsCard(context),
        saidCard(whole),
        goalCard(whole),
      ],
    },
  };
}
