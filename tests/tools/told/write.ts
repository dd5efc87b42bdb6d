/**
 * Writes down what is told, as it is now: `npm run told`. First the calls are played, then what is known of them and
 * what the tests describe is assessed; `npm run told -- quick` leaves out the playing, where only sentences changed.
 */
import { spawn } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import process from 'node:process';

const TELLING = /\b(?:toldOf|assessAsTold)\('/;

/** Files of tests that hold something to what is written down. */
async function telling(folder: string): Promise<string[]> {
  const names = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.test.ts'));
  const texts = await Promise.all(names.map((name) => readFile(`${folder}/${name}`, 'utf8')));
  return names.filter((_, at) => TELLING.test(texts[at] ?? '')).map((name) => `${folder}/${name}`);
}

async function run(files: readonly string[]): Promise<void> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'tests/run.ts', ...files], {
    stdio: 'inherit',
    env: { ...process.env, WRITE_TOLD: 'yes' },
  });
  const code = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', resolve);
  });
  if (code !== 0) throw new Error(`not all was written down: exit ${String(code)}`);
}

if (!process.argv.includes('quick')) await run(['tests/calls/']);
await run([...(await telling('tests/mechanics/assessment')), ...(await telling('tests/assessment'))]);
