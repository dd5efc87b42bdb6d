import { beforeAll, describe, expect, it } from 'vitest';
import { wordsOf } from '../../server/mechanics/assessment/words-of.ts';
import { buildOf } from '../mechanics/assessment/laws/builds.ts';
import { STOP_CODES, withStop } from '../mechanics/assessment/laws/with-stop.ts';
import { tellsToTurn } from '../tools/tells-to-turn.ts';
import { neverSaid } from '../tools/told-texts.ts';
import { plain, type Shown, shownBuild } from './one-voice/shown.ts';
import { strays } from './one-voice/strays.ts';

/*
 * Law 2, one voice: each sentence is made once, and every page shows that sentence. Generated builds are shown on
 * every page of a call, on both sides; no verdict word may stand there that the assessment does not say.
 */

/** How many builds are shown; `VOICE_BUILDS=500 npm test -- one-voice` for more. */
const BUILDS = Number(process.env.VOICE_BUILDS ?? 60);
/** Of these, so many are shown once more with each kind of stop raised. */
const STOPPED = 8;
const FIRST = Number(process.env.VOICE_FIRST ?? 1);

/** What only the desk does or asks. */
const OF_THE_DESK: readonly RegExp[] = [
  /\bthe desk (then |first )?(lifts|strikes)\b/i,
  /(^|[:.] )Ask\b/,
  /\bthe caller\b|\bcaller’s\b/i,
];
/** The builder asks the desk for it. */
const SAID_TO_THE_DESK: ReadonlySet<string> = new Set([
  'If anything did, nobody turns it from now on: photos only, until the desk lifts the stop.',
]);

let all: Shown[];
/** What stands on the pages of every build, stopped or not: labels, hints and cautions of every call. */
let everywhere: ReadonlySet<string>;

/** Lines that stand on a page of each of these builds. */
function onAllOf(builds: readonly Shown[]): string[] {
  const counts = new Map<string, Set<number>>();
  for (const { seed, faces } of builds)
    for (const { lines } of faces)
      for (const line of lines) counts.set(line, (counts.get(line) ?? new Set()).add(seed));
  return [...counts].filter(([, seeds]) => seeds.size === builds.length).map(([line]) => line);
}

beforeAll(() => {
  all = Array.from({ length: BUILDS }, (_, index) => shownBuild(FIRST + index));
  const stopped = ({ assessment }: Shown) => assessment.stop.length > 0;
  everywhere = new Set([...onAllOf(all.filter(stopped)), ...onAllOf(all.filter((each) => !stopped(each)))]);
}, 600_000);

describe(`one voice, over ${BUILDS} generated builds on every page of their call`, () => {
  it('no verdict word stands anywhere that the assessment does not say', () => {
    expect(all.flatMap((each) => strays(each, everywhere)).slice(0, 40)).toEqual([]);
  });

  it('every reason to stop stands on every page, as it is said', () => {
    const silent = all.flatMap(({ seed, assessment: { stop }, faces }) =>
      faces.flatMap(({ name, lines }) => {
        const text = lines.join(' ');
        return stop
          .filter(({ sentence }) => !text.includes(plain(sentence)))
          .map(({ sentence }) => `build ${seed}, ${name}: ${sentence}`);
      }),
    );
    expect(silent.slice(0, 20)).toEqual([]);
  });

  it.for(STOP_CODES)('stopped by %s: no page on either side tells anybody to turn, run or set it', (code) => {
    const told = all.slice(0, STOPPED).flatMap(({ seed }) => {
      const { assessment, faces } = shownBuild(seed, withStop(buildOf(seed), code));
      expect(assessment.stop.map((each) => each.code)).toContain(code);
      return faces.flatMap(({ name, lines }) => {
        const text = lines.join(' ');
        const silent = assessment.stop.filter(({ sentence }) => !text.includes(plain(sentence)));
        return [
          ...lines.flatMap(tellsToTurn).map((sentence) => `build ${seed}, ${name}: ${sentence}`),
          ...silent.map(({ id }) => `build ${seed}, ${name}: does not say ${id}`),
        ];
      });
    });
    expect([...new Set(told)].slice(0, 20)).toEqual([]);
  });

  it('the builder is told what is done at the engine, not what the desk asks or does', () => {
    const told = all.flatMap(({ seed, faces }) =>
      faces
        .filter(({ name }) => name.startsWith('bench/'))
        .flatMap(({ name, lines }) =>
          lines
            .filter((line) => OF_THE_DESK.some((each) => each.test(line)) && !SAID_TO_THE_DESK.has(line))
            .map((line) => `build ${seed}, ${name}: ${line}`),
        ),
    );
    expect([...new Set(told)].slice(0, 20)).toEqual([]);
  });

  it('no page says a word that is never said', () => {
    const found = all.flatMap(({ seed, faces }) =>
      faces.flatMap(({ name, lines }) =>
        lines.flatMap(neverSaid).map((word) => `build ${seed}, ${name}: ${word}`),
      ),
    );
    expect([...new Set(found)].slice(0, 20)).toEqual([]);
  });

  it('what is next and every headline stands on the report and the takeover card', () => {
    const silent = all.flatMap(({ seed, assessment: { next, headlines }, faces }) =>
      faces
        .filter(({ name }) => name === 'report' || name === 'takeover')
        .flatMap(({ name, lines }) => {
          const text = lines.join(' ');
          const wanted = [
            ...headlines.map(({ sentence }) => sentence),
            ...(next === undefined ? [] : [next.sentence]),
          ];
          return wanted
            .filter((sentence) => !text.includes(plain(sentence)))
            .map((sentence) => `build ${seed}, ${name}: ${sentence}`);
        }),
    );
    expect(silent.slice(0, 20)).toEqual([]);
  });

  it('the builds say every word', () => {
    const words = new Set(all.flatMap(({ assessment }) => wordsOf(assessment).map(({ word }) => word)));
    expect([...words].sort()).toEqual(['agrees', 'cannot-tell', 'clear', 'close', 'differs', 'odd', 'short']);
  });
});
