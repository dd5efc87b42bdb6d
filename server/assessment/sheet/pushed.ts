import { z } from 'zod';
import { newSheetReadings, type SheetHow, sheetReading } from '../../../shared/schemas/sheet.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import { asLength, newestDial } from '../../records/sheet/said-in-turns.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { loadBuildRecord } from '../../records/whole-build/load-build.ts';
import { assessed, callMeant } from '../assessed.ts';
import { type NotKept, questionsOfNotKept } from './not-kept.ts';

/** A question with the places, in the list that was sent, of the readings it is about. */
export interface PushedQuestion {
  readonly question: AssessedQuestion;
  readonly rows: readonly number[];
}

const rowsOf = (
  questions: readonly AssessedQuestion[],
  place: ReadonlyMap<string, number>,
): PushedQuestion[] =>
  questions.flatMap((question) => {
    const rows = question.restsOn.flatMap((id) => place.get(id) ?? []);
    return rows.length === 0 ? [] : [{ question, rows: rows.toSorted((a, b) => a - b) }];
  });

const load = (tx: Tx, principal: Principal, buildId: string): Promise<BuildRecord> =>
  loadBuildRecord(tx, principal, { buildId }, { access: 'write' });

/** What readings are asked that were just kept. */
export async function questionsOfKept(
  tx: Tx,
  principal: Principal,
  buildId: string,
  kept: readonly SheetReading[],
): Promise<PushedQuestion[]> {
  const { questions } = assessed(await load(tx, principal, buildId));
  const place = new Map(kept.map(({ id }, index) => [id, index]));
  return rowsOf(
    questions.filter(({ step }) => step === 'sheet'),
    place,
  );
}

const howSchema = newSheetReadings.omit({ readings: true });
const sent = z.object({ readings: z.array(z.unknown()).max(400) });

/** How it was read, as far as that was sent in order; else as if nothing was said of it. */
function howSent(body: object): SheetHow {
  const { readings: _, ...how } = { readings: [], ...body };
  const read = howSchema.safeParse(how);
  return read.success ? read.data : howSchema.parse({});
}

/** What the readings of a refused sheet would be asked, as far as they can be read. */
export async function questionsOfRefused(
  tx: Tx,
  principal: Principal,
  buildId: string,
  body: unknown,
): Promise<PushedQuestion[]> {
  const given = sent.safeParse(body);
  if (!given.success || typeof body !== 'object' || body === null) return [];
  const record = await load(tx, principal, buildId);
  const how = howSent(body);
  const dial = how.perTurn ?? newestDial(record.setUps);
  const readable = given.data.readings.flatMap((each, index): NotKept[] => {
    const read = sheetReading.safeParse(each);
    if (!read.success) return [];
    const as = asLength(read.data.reading, dial);
    return as.ok ? [{ ...read.data, reading: as.reading, id: `sent:${index}` }] : [];
  });
  const place = new Map(readable.map(({ id }) => [id, Number(id.slice('sent:'.length))]));
  return rowsOf(questionsOfNotKept(record, callMeant(record), how, readable), place);
}
