import type { CallContext } from '../../call/context.ts';
import { isStopped } from '../../call/under-stop.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';

/** What is looked at again with other arms takes turning the engine: under a stop it waits. */
export const checksNow = (context: CallContext, { checks }: ChangeDetail): string[] =>
  isStopped(context) ? [] : checks.map(({ sentence }) => sentence);
