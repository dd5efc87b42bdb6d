/**
 * The builds that the tests of the assessment describe, whatever they ask of them: what a search for further builds
 * begins with. They are taken down where the tests call the assessment, in a copy of the project.
 */
import { cp, mkdir, readdir, readFile, rename, rm, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import process from 'node:process';
import fc from 'fast-check';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { inOwnNumbers } from '../../tools/told/own-numbers.ts';
import { ASSESSMENT_SLICES } from '../assessment-slices.ts';
import { collectedTests } from '../collected-tests.ts';
import { filesOf } from '../fingerprint.ts';

declare global {
  /** What was assessed while a test ran. */
  var assessedBuilds: Set<Evidence> | undefined;
}

const FOLDER = 'reports/corpus/seen';
export const SEEN = 'reports/corpus/seen.json';

const WRAPPER = `import type { Assessment } from './assessment.ts';
import type { Evidence } from './evidence.ts';
import { assess as assessed } from './assess-itself.ts';
export const assess = (evidence: Evidence): Assessment => {
  const builds = globalThis.assessedBuilds;
  builds?.add(evidence);
  // What its parts are given of it is no build of its own.
  globalThis.assessedBuilds = undefined;
  try {
    return assessed(evidence);
  } finally {
    globalThis.assessedBuilds = builds;
  }
};
`;

/** Parts that tests call by themselves, with the whole evidence. */
const PART = /(export function \w+(?:Part|Read)\(\s*evidence: Evidence\b[\s\S]*?\{\n)/;

async function copied(): Promise<void> {
  await rm(FOLDER, { recursive: true, force: true });
  await mkdir(FOLDER, { recursive: true });
  for (const each of await readdir('.'))
    if (['server', 'shared', 'seeds', 'tests', 'views', 'package.json', 'tsconfig.json'].includes(each))
      await cp(each, path.join(FOLDER, each), { recursive: true });
  await symlink(path.resolve('node_modules'), path.join(FOLDER, 'node_modules'));
  const assess = path.join(FOLDER, 'server/mechanics/assessment/assess.ts');
  await rename(assess, assess.replace('assess.ts', 'assess-itself.ts'));
  await writeFile(assess, WRAPPER);
  const folder = path.dirname(assess);
  for (const name of await readdir(folder, { recursive: true })) {
    const file = path.join(folder, name);
    const text = name.endsWith('.ts') ? await readFile(file, 'utf8') : '';
    if (PART.test(text))
      await writeFile(file, text.replace(PART, '$1  globalThis.assessedBuilds?.add(evidence);\n'));
  }
}

/** Takes them down, as JSON, the same in every run. */
export async function takeDownSeen(): Promise<void> {
  const slices = await Promise.all(ASSESSMENT_SLICES.map(filesOf));
  const files = [...new Set(slices.flatMap(({ tests }) => tests))].filter((file) => !/\/told\//.test(file));
  await copied();
  fc.configureGlobal({ seed: 20, endOnFailure: true, numRuns: 20 });
  const found = new Set<Evidence>();
  globalThis.assessedBuilds = found;
  const builds = new Set<string>();
  const home = process.cwd();
  process.chdir(FOLDER);
  for (const test of await collectedTests(files)) {
    await test.run().catch(() => undefined);
    for (const evidence of found) {
      const text = JSON.stringify(inOwnNumbers(evidence));
      builds.add(text);
    }
    found.clear();
  }
  process.chdir(home);
  globalThis.assessedBuilds = undefined;
  await writeFile(SEEN, `[\n${[...builds].toSorted((a, b) => a.length - b.length).join(',\n')}\n]\n`);
}

export async function seenBuilds(): Promise<Evidence[]> {
  const builds: Evidence[] = JSON.parse(await readFile(SEEN, 'utf8'));
  return builds;
}
