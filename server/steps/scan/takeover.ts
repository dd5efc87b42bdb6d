import { asTold } from '../../../shared/quantities/as-entered.ts';
import type { CallContext } from '../../call/context.ts';
import { questionsOf } from '../../call/question-form.ts';
import type { TakeoverItem } from '../../call/takeover-items.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { scanNamed } from './scan-named.ts';

/** Each scan as it was read, what it says, and what it asks. */
export function scanItems(context: CallContext): TakeoverItem[] {
  return [
    ...stillStanding(context.record.gapScans).map(
      (scan): TakeoverItem => ({
        card: 'raw',
        label: `Piston to valve over the crank, ${scanNamed(scan, context)}:`,
        text: asTold(scan.readAs),
      }),
    ),
    ...context.assessment.details.scans.scans.map(
      ({ said }): TakeoverItem => ({ card: 'of-any-goal', text: said }),
    ),
    ...questionsOf(context, 'scan')
      .filter(({ answered }) => answered === undefined)
      .map(({ ask }): TakeoverItem => ({ card: 'of-any-goal', label: 'Scan:', text: ask })),
  ];
}
