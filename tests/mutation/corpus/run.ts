/**
 * Chooses the builds of `tests/assessment-told/corpus/`: `npm run told -- corpus noise lash` for these parts of the
 * assessment, without a name for all of them. A part takes minutes: faults are put into its files one after another,
 * and a build is kept when it notices one that those before did not. What is noticed by none is listed in
 * `reports/corpus/<part>.txt`. The builds of a part that are there are kept where `--more` is said.
 */
import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import process from 'node:process';
import { besideUsual, keptBuilds, nameOf, writeBuilds, writeToldOfBuilds } from '../../tools/told/corpus.ts';
import { usualEvidence } from '../../tools/told/kept.ts';
import { ASSESSMENT_SLICES, partOf } from '../assessment-slices.ts';
import { filesOf } from '../fingerprint.ts';
import { type Given, given, takeDownGiven } from './given.ts';
import { type Mutated, mutated } from './mutated.ts';
import { type Effort, type Found, Search } from './search.ts';
import { asEvidence, asPlain } from './varied.ts';

const SEED = 7;
const PARTS = ASSESSMENT_SLICES.map(partOf);

const began = performance.now();
const say = (line: string) => {
  const [real, own] = [(performance.now() - began) / 1000, process.cpuUsage().user / 1e6];
  console.log(`${real.toFixed(0)} s, ${own.toFixed(0)} s of the processor: ${line}`);
};

/** Faults that no build notices, each in one line. */
function linesOf({ mutants, passed }: Mutated, { neverReached, notNoticed }: Found): string {
  const by = new Map(mutants.map((mutant) => [mutant.id, mutant]));
  const line = (why: string) => (id: string) => {
    const mutant = by.get(id);
    if (mutant === undefined) return '';
    const { fileName, location, mutatorName, replacement } = mutant;
    const short = replacement.replaceAll(/\s+/g, ' ').slice(0, 100);
    return `${why} ${fileName}:${location.start.line + 1}:${location.start.column + 1} ${mutatorName} ${short}`;
  };
  const why = (id: string) => line(passed.has(id) ? 'always so' : 'never')(id);
  return `${[...neverReached.map(why), ...notNoticed.map(line('same'))].join('\n')}\n`;
}

/** The test that holds them to what is told, where the part has none yet. */
async function withTest(part: string): Promise<void> {
  const file = `tests/mechanics/assessment/told/corpus/${part}.test.ts`;
  if (!existsSync(file))
    await writeFile(file, `import { corpusOf } from '../corpus-of.ts';\n\ncorpusOf('${part}');\n`);
}

async function choose(part: string, from: Given, effort: Effort, before: boolean): Promise<void> {
  const slice = ASSESSMENT_SLICES.find((each) => partOf(each) === part);
  if (slice === undefined) throw new Error(`no part ${part}: ${PARTS.join(', ')}`);
  const { sources } = await filesOf(slice);
  const faults = await mutated(part, sources);
  say(`${part}: ${faults.mutants.length} faults`);
  const search = new Search(faults, from.usual, from.words, SEED, say);
  const usual = usualEvidence();
  if (before) search.keepOf(keptBuilds(part).map((build) => asPlain({ ...usual, ...build })));
  search.learnFrom(from.builds);
  const found = search.find(effort, (builds) => {
    // Made smaller, two may have become one.
    const kept = builds.map((build) => besideUsual(asEvidence(build)));
    writeBuilds(part, [...new Map(kept.map((build) => [nameOf(build), build])).values()]);
    writeToldOfBuilds(part);
  });
  await withTest(part);
  await writeFile(`reports/corpus/${part}.txt`, linesOf(faults, found));
  const left = found.neverReached.length + found.notNoticed.length;
  const share = (100 * (found.mutants - left)) / found.mutants;
  say(`${part}: ${found.builds.length} builds notice ${share.toFixed(1)} % of ${found.mutants}`);
}

const words = process.argv.slice(2);
const number = (name: string, usual: number): number =>
  Number(words.find((word) => word.startsWith(`--${name}=`))?.split('=')[1] ?? usual);
const asked = words.filter((word) => !word.startsWith('--'));
if (words.includes('--given') || !existsSync('reports/corpus/pool.json')) await takeDownGiven(say);
const from = await given();
for (const part of asked.length > 0 ? asked : PARTS)
  await choose(
    part,
    from,
    { drawn: number('drawn', 400), tried: number('tried', 20), variations: number('variations', 10) },
    words.includes('--more'),
  );
