/**
 * Writes down what is told, as it is now: `npm run told`. First the calls are played, then what is known of them and
 * what the tests describe is assessed; `npm run told -- quick` leaves out the playing, where only sentences changed.
 * `npm run told -- corpus noise` first chooses builds anew for that part of the assessment (tests/mutation/corpus/).
 */
import { spawn } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import process from 'node:process';

const TELLING = /\b(?:toldOf|assessAsTold|corpusOf)\('/;

/** Files of tests that hold something to what is written down. */
async function telling(folder: string): Promise<string[]> {
  const names = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.test.ts'));
  const texts = await Promise.all(names.map((name) => readFile(`${folder}/${name}`, 'utf8')));
  return names.filter((_, at) => TELLING.test(texts[at] ?? '')).map((name) => `${folder}/${name}`);
}

async function node(words: readonly string[], env: NodeJS.ProcessEnv): Promise<void> {
  const child = spawn(process.execPath, ['--import', 'tsx', ...words], { stdio: 'inherit', env });
  const code = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', resolve);
  });
  if (code !== 0) throw new Error(`not all was written down: exit ${String(code)}`);
}

const run = (files: readonly string[]): Promise<void> =>
  node(['tests/run.ts', ...files], { ...process.env, WRITE_TOLD: 'yes' });

const [what, ...words] = process.argv.slice(2);
if (what === 'corpus') await node(['tests/mutation/corpus/run.ts', ...words], process.env);
else {
  if (what !== 'quick') await run(['tests/calls/']);
  await run([...(await telling('tests/mechanics/assessment')), ...(await telling('tests/assessment'))]);
}
