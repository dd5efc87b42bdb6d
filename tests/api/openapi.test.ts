import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import openapiTS, { astToString } from 'openapi-typescript';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { memberOf } from '../../shared/member.ts';
import { type TestService, testService } from '../tools/service.ts';

const run = promisify(execFile);
const ROOT = fileURLToPath(new URL('../../', import.meta.url));

let service: TestService;
let folder: string;
let document: string;

beforeAll(async () => {
  service = await testService();
  folder = await mkdtemp(path.join(tmpdir(), 'benchcall-openapi-'));
  const response = await service.request({ url: '/api/v1/openapi.json' });
  expect(response.statusCode).toBe(200);
  document = path.join(folder, 'openapi.json');
  await writeFile(document, response.body);
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
  await service.close();
});

test('the OpenAPI document passes a linter with its recommended-strict rules', async () => {
  const lint = path.join(ROOT, 'node_modules/.bin/redocly');
  const { stdout, stderr } = await run(
    lint,
    ['lint', document, '--extends=recommended-strict', '--format=summary'],
    {
      env: { ...process.env, REDOCLY_TELEMETRY: 'off', REDOCLY_SUPPRESS_UPDATE_NOTICE: 'true' },
    },
  ).catch((error: unknown) => {
    throw new Error(
      String(
        typeof error === 'object' && error !== null
          ? `${memberOf(error, 'stdout')}\n${memberOf(error, 'stderr')}`
          : error,
      ),
    );
  });
  expect(`${stdout}${stderr}`).toMatch(/valid/i);
});

test('a client generated from the document type-checks and does the main job', async () => {
  const { default: spec } = await import(document, { with: { type: 'json' } });
  const types = astToString(await openapiTS(spec));
  const clientFolder = await mkdtemp(path.join(ROOT, '.tmp-client-'));
  try {
    await writeFile(path.join(clientFolder, 'schema.ts'), types);
    const script = await import('node:fs/promises').then((fs) =>
      fs.readFile(new URL('../tools/client-main-job.ts.txt', import.meta.url), 'utf8'),
    );
    await writeFile(path.join(clientFolder, 'job.ts'), script);
    await writeFile(
      path.join(clientFolder, 'tsconfig.json'),
      JSON.stringify({
        extends: '../tsconfig.json',
        files: ['schema.ts', 'job.ts'],
        compilerOptions: { types: ['node'] },
      }),
    );
    await run(process.execPath, [
      path.join(ROOT, 'node_modules/typescript-native/bin/tsc'),
      '--noEmit',
      '-p',
      clientFolder,
    ]).catch((error: unknown) => {
      throw new Error(
        String(typeof error === 'object' && error !== null ? memberOf(error, 'stdout') : error),
      );
    });
    const base = await service.listen();
    const person = await service.person();
    const { stdout } = await run(process.execPath, ['--import', 'tsx', path.join(clientFolder, 'job.ts')], {
      cwd: ROOT,
      env: { ...process.env, BASE: base, TOKEN: person.token },
    });
    // Common practice, no source: .842 over .482 is taken as a 1.75.
    expect(stdout.trim().split('\n').at(-1)).toBe('1.747, its interval holds 1.75');
  } finally {
    await rm(clientFolder, { recursive: true, force: true });
  }
  // A compiler and a second process run in here.
}, 300_000);
