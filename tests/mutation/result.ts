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

/** What is read of the report that the mutation run writes, an open format of its own schema. */
const reportSchema = z.object({
  files: z.record(
    z.string(),
    z.object({
      mutants: z.array(
        z.object({
          mutatorName: z.string(),
          replacement: z.string().optional(),
          status: z.string(),
          location: z.object({ start: z.object({ line: z.int() }) }),
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

const sameMutant = (a: Survivor, b: Survivor) =>
  a.file === b.file && a.mutator === b.mutator && a.replacement === b.replacement;

/** The result of the run that has just ended; what was explained before of the same mutants is kept. */
export async function resultOf(slice: string, fingerprint: string, seconds: number): Promise<SliceResult> {
  const { files } = reportSchema.parse(JSON.parse(await readFile(REPORT, 'utf8')));
  const before = await keptResult(slice);
  const mutants = Object.entries(files).flatMap(([file, { mutants: own }]) =>
    own.map((mutant) => ({ ...mutant, file })),
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
      .map(({ file, location, mutatorName, replacement = '' }) => {
        const survivor = {
          file: file.replace('server/mechanics/', ''),
          line: location.start.line,
          mutator: mutatorName,
          replacement,
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
