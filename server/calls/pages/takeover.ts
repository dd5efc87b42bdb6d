import type { Registered } from '../../compute/registry.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import type { Page } from '../../pages/render.ts';
import { stopFlag } from '../report/summary.ts';
import {
  callerCard,
  foundCard,
  marksCard,
  missingCard,
  nextCard,
  photographsCard,
  promisesCard,
  saidCard,
  swapsCard,
} from '../report/takeover/cards.ts';
import { plusCard } from '../report/takeover/plus.ts';
import { rawCard } from '../report/takeover/raw.ts';
import { lookAtWhole } from '../report/whole.ts';

/** The call on one screen, for a colleague who takes it over. */
export async function takeoverPage(
  tx: Tx,
  given: PageRequest,
  computations: ReadonlyMap<string, Registered>,
): Promise<Page> {
  const whole = await lookAtWhole(tx, given, computations);
  const { sight } = whole;
  return {
    template: 'takeover',
    title: `Take over call ${sight.call.number}`,
    place: '/calls',
    data: {
      back: sight.base,
      title: `Take over call ${sight.call.number}`,
      stop: stopFlag(whole),
      cards: [
        callerCard(sight),
        missingCard(sight),
        nextCard(whole),
        promisesCard(sight),
        foundCard(whole),
        rawCard(whole),
        marksCard(sight),
        ...swapsCard(sight),
        photographsCard(sight, whole.photographs),
        saidCard(whole),
        plusCard(whole),
      ],
    },
  };
}
