import { readFile, writeFile } from 'node:fs/promises';
import { buildOf } from '../../mechanics/assessment/laws/builds.ts';
import { evidenceIn } from '../../tools/told/evidence-text.ts';
import { namesIn, readTold, usualEvidence } from '../../tools/told/kept.ts';
import { ASSESSMENT_SLICES } from '../assessment-slices.ts';
import { filesOf } from '../fingerprint.ts';
import { moreBuilds } from './more-builds.ts';
import { mutated } from './mutated.ts';
import type { Plain } from './plain-data.ts';
import { Search } from './search.ts';
import { seenBuilds, takeDownSeen } from './seen.ts';
import { asPlain } from './varied.ts';
import { type Vocabulary, vocabularyOf } from './vocabulary.ts';

const CALLS = ['change', 'noise', 'others', 'part', 'ratio', 'setting', 'sheet'];
const GENERATED = 150;
const POOL = 'reports/corpus/pool.json';

/** What a search begins with: few builds that together come by all that the tests, the calls and the laws come by. */
export interface Given {
  readonly usual: Plain;
  readonly builds: readonly Plain[];
  readonly words: Vocabulary;
}

/** Every build is held to the limits in force, as those of the calls are. */
async function allBuilds(): Promise<Plain[]> {
  const usual = usualEvidence();
  const played = CALLS.flatMap((about) =>
    namesIn(about, '.json').flatMap((name) =>
      evidenceIn(readTold(`${about}/${name}.json`), usual).times.map(({ evidence }) => evidence),
    ),
  );
  const drawn = Array.from({ length: GENERATED }, (_, at) => buildOf(at + 1));
  return [...(await seenBuilds()), ...moreBuilds(), ...played, ...drawn].map((evidence) =>
    asPlain({ ...evidence, limits: usual.limits }),
  );
}

/** Takes them down and looks which are needed; it is done once for all parts. */
export async function takeDownGiven(say: (line: string) => void): Promise<void> {
  await takeDownSeen();
  const slices = await Promise.all(ASSESSMENT_SLICES.map(filesOf));
  const whole = await mutated('all', [...new Set(slices.flatMap(({ sources }) => sources))]);
  const builds = await allBuilds();
  const search = new Search(whole, asPlain(usualEvidence()), vocabularyOf(builds), 1, say);
  search.learnFrom(builds);
  await writeFile(
    POOL,
    `[\n${search
      .known()
      .map((build) => JSON.stringify(build))
      .join(',\n')}\n]\n`,
  );
}

export async function given(): Promise<Given> {
  const builds: Plain[] = JSON.parse(await readFile(POOL, 'utf8'));
  return {
    usual: asPlain(usualEvidence()),
    builds: [...builds, ...moreBuilds().map(asPlain)],
    words: vocabularyOf(await allBuilds()),
  };
}
