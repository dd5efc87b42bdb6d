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
        // The result first, then what is done about it; who called is looked up.
        foundCard(whole),
        nextCard(whole),
        missingCard(frame, context),
        ...notCoveredCard(context),
        promisesCard(context),
        callerCard(context),
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
