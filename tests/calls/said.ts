import * as z from 'zod';
import type { Played } from './play.ts';

const sentence = z.object({ id: z.string(), sentence: z.string() });
const headline = sentence.extend({ step: z.string() });
const assessment = z.object({
  headlines: z.array(headline),
  stop: z.array(sentence),
  notToRun: z.array(sentence),
  next: z.object({ action: z.string(), sentence: z.string() }).optional(),
  missing: z.array(sentence),
  judgements: z.array(
    sentence.extend({ word: z.string().optional(), against: z.object({ to: z.string() }).optional() }),
  ),
  quantities: z.array(
    z.object({
      id: z.string(),
      value: z.number().optional(),
      low: z.number().optional(),
      high: z.number().optional(),
    }),
  ),
  questions: z.array(
    z.object({
      id: z.string(),
      code: z.string(),
      ask: z.string(),
      weight: z.enum(['strong', 'weak']),
      isNext: z.boolean(),
      answered: z.object({ answer: z.string() }).optional(),
    }),
  ),
});

/** What a call says, with its own names in place of ids. */
export type Said = z.infer<typeof assessment>;

const ID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;

const byId = <Each extends { readonly id: string }>(all: readonly Each[]): Each[] =>
  all.toSorted((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));

/** As the desk is told it, or another who may look. */
export async function saidIn(played: Played, by?: Readonly<Record<string, string>>): Promise<Said> {
  const names = new Map([...played.kept].map(([name, id]) => [id, name]));
  const json = JSON.stringify(await played.get(`build/assessment?callId=${played.callId}`, by));
  const said = assessment.parse(JSON.parse(json.replaceAll(ID, (id) => names.get(id) ?? 'an-id')));
  // Lists that are ordered by ids, which are others in each playing.
  return {
    ...said,
    judgements: byId(said.judgements),
    quantities: byId(said.quantities),
    questions: byId(said.questions),
  };
}
