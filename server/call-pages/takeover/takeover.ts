import type { Registered } from '../../compute/registry.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../web/page-route.ts';
import type { Page } from '../../web/pages/render.ts';
import { loadReportData } from '../report/report-data.ts';
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
} from './cards.ts';
import { plusCard } from './cards-by-goal.ts';
import { rawCard } from './raw-readings.ts';

/** The call on one screen, for a colleague who takes it over. */
export async function takeoverPage(
  tx: Tx,
  req: PageRequest,
  computations: ReadonlyMap<string, Registered>,
): Promise<Page> {
  const report = await loadReportData(tx, req, computations);
  const { context } = report;
  return {
    template: 'takeover',
    title: `Take over call ${context.call.number}`,
    place: '/calls',
    data: {
      back: context.base,
      title: `Take over call ${context.call.number}`,
      stop: stopFlag(report),
      cards: [
        callerCard(context),
        missingCard(context),
        nextCard(report),
        promisesCard(context),
        foundCard(report),
        rawCard(report),
        marksCard(context),
        ...swapsCard(context),
        photographsCard(context, report.photographs),
        saidCard(report),
        plusCard(report),
      ],
    },
  };
}
