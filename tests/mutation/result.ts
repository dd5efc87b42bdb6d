import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import * as z from 'zod';

const RESULTS = 'tests/mutation/results';
const REPORT = 'reports/mutation/mutation.json';

const survivorSchema = z.strictObject({
  file: z.string(),
  line: z.int(),
  mutator: z.string(),
  replacement: z.string(),
  /** What was replaced, and the line it begins on: an explanation is of this and of no other mutant. */
  original: z.string().optional(),
  code: z.string().optional(),
  /** Why no test can notice it, or why none should: written by a person after looking. */
  why: z.string().optional(),
});
const resultSchema = z.strictObject({
  slice: z.string(),
  fingerprint: z.string(),
  seconds: z.int(),
  killed: z.int(),
  ranOutOfTime: z.int(),
  survivors: z.array(survivorSchema),
});
export type SliceResult = z.infer<typeof resultSchema>;
type Survivor = z.infer<typeof survivorSchema>;

const placeSchema = z.object({ line: z.int(), column: z.int() });
type Place = z.infer<typeof placeSchema>;

/** What is read of the report that the mutation run writes, an open format of its own schema. */
const reportSchema = z.object({
  files: z.record(
    z.string(),
    z.object({
      source: z.string(),
      mutants: z.array(
        z.object({
          mutatorName: z.string(),
          replacement: z.string().optional(),
          status: z.string(),
          location: z.object({ start: placeSchema, end: placeSchema }),
        }),
      ),
    }),
  ),
});

const fileOf = (slice: string) => path.join(RESULTS, `${slice}.json`);

/** The score kept of a slice, if it has ever been run to its end. */
export async function keptResult(slice: string): Promise<SliceResult | undefined> {
  const text = await readFile(fileOf(slice), 'utf8').catch(() => undefined);
  return text === undefined ? undefined : resultSchema.parse(JSON.parse(text));
}

/** One of before is the same mutant where the same code of the same line was replaced by the same. */
const sameMutant = (old: Survivor, now: Survivor) =>
  old.file === now.file &&
  old.mutator === now.mutator &&
  old.replacement === now.replacement &&
  (old.code === undefined ? old.line === now.line : old.code === now.code && old.original === now.original);

/** The text between two places; lines and columns are counted from one. */
function textBetween(source: string, start: Place, end: Place): string {
  const lines = source.split('\n').slice(start.line - 1, end.line);
  const last = lines.length - 1;
  return lines
    .map((line, at) => line.slice(at === 0 ? start.column - 1 : 0, at === last ? end.column - 1 : undefined))
    .map((line) => line.trim())
    .join(' ');
}

/** The result of the run that has just ended; what was explained before of the same mutants is kept. */
export async function resultOf(slice: string, fingerprint: string, seconds: number): Promise<SliceResult> {
  const { files } = reportSchema.parse(JSON.parse(await readFile(REPORT, 'utf8')));
  const before = await keptResult(slice);
  const mutants = Object.entries(files).flatMap(([file, { source, mutants: own }]) =>
    own.map((mutant) => ({ ...mutant, file, source })),
  );
  const count = (status: string) => mutants.filter((mutant) => mutant.status === status).length;
  return {
    slice,
    fingerprint,
    seconds,
    killed: count('Killed'),
    ranOutOfTime: count('Timeout'),
    survivors: mutants
      .filter(({ status }) => status === 'Survived' || status === 'NoCoverage')
      .map(({ file, source, location: { start, end }, mutatorName, replacement = '' }) => {
        const survivor = {
          file: file.replace('server/mechanics/', ''),
          line: start.line,
          mutator: mutatorName,
          replacement,
          original: textBetween(source, start, end),
          code: source.split('\n')[start.line - 1]?.trim() ?? '',
        };
        const why = before?.survivors.find((old) => sameMutant(old, survivor))?.why;
        return why === undefined ? survivor : { ...survivor, why };
      }),
  };
}

export async function keepResult(result: SliceResult): Promise<void> {
  await mkdir(RESULTS, { recursive: true });
  await writeFile(fileOf(result.slice), `${JSON.stringify(result, undefined, 2)}\n`);
}
