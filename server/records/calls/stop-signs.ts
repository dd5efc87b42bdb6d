import { type RawBuilder, sql } from 'kysely';
import { isNoiseQuestion, NOISE_QUESTIONS } from '../../../shared/schemas/noise.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { noiseAsks } from '../../mechanics/noise/noise-words.ts';

/** Questions whose answers, or the words beside them, may stop it: named by word, by id, or by what was asked. */
const ASKED = Object.keys(NOISE_QUESTIONS).filter(isNoiseQuestion).flatMap(noiseAsks);
const answersASign = sql`(told.code like 'noise-%' or told.question_id like 'question:noise-%'
  or told.question in (${sql.join(ASKED)}))`;

/** Nobody can see from here whether a reading that comes after a stop was taken before it: whoever sends it says so. */
export const SEND_LATER =
  'If it was read before the stop, send it with that said, and it is kept; else it waits until the desk has lifted the stop.';

/**
 * Refuses what turns the engine while a stop stands, and says what can be entered all the same. The assessment, which
 * stands above the records, has it.
 */
export type TurningCheck = (tx: Tx, principal: Principal, buildId: string, open?: string) => Promise<void>;

/**
 * Whether anything of the build could stop it, as a condition beside what else is asked: entries of the sheet, scans of
 * a gap, entries of the lash log, marks, the turns of adjusters and lobes read in set-ups raise stops, and so does what
 * was told on a call, signs of damage among it. A lobe is told by two others: fewer set-ups than three raise none.
 * Most readings of a ratio are kept on builds with none of these, and then the whole record need not be read and judged
 * first.
 */
export const mayBeStopped = ({ shopId }: Principal, buildId: string | RawBuilder<string>) => {
  const ofBuild = sql`told.shop_id = ${shopId} and told.build_id = ${buildId}`;
  return sql<boolean>`(exists (select 1 from valve_reading as told where ${ofBuild})
    or exists (select 1 from gap_scan as told where ${ofBuild})
    or exists (select 1 from tip_mark as told where ${ofBuild})
    or exists (select 1 from working as told where ${ofBuild} and told.computation in ('lifter-preload', 'adjuster'))
    or exists (select 1 from answer as told where ${ofBuild} and ${answersASign})
    or (select count(distinct told.set_up_id) from reading as told where ${ofBuild} and told.kind = 'lobe-lift') > 2
    or exists (select 1 from call as told where ${ofBuild} and (told.held or told.contact = 'something')))`;
};
