import { expect, test } from 'vitest';
import type { ChangeDetail, ChangeGap } from '../../../../server/mechanics/assessment/change/detail.ts';
import { bareInches, bareLimit } from '../../../../server/mechanics/assessment/common/said.ts';
import type { Assessed } from './law.ts';

/** A figure as anybody reads it off the page. */
const read = (text: string): number => Number(text.replace('−', '-'));

function byFigures({ after, limit }: ChangeGap): string {
  const least = read(bareLimit(limit.value));
  if (after?.low !== undefined && read(bareInches(after.low)) >= least) return 'clear';
  return after?.high !== undefined && read(bareInches(after.high)) < least ? 'short' : 'close';
}

interface GapOfBuild {
  readonly seed: number;
  readonly detail: ChangeDetail;
  readonly gap: ChangeGap;
}

const gapsOf = (all: readonly Assessed[]): GapOfBuild[] =>
  all.flatMap(({ seed, assessment }) =>
    assessment.details.change.flatMap((detail) => detail.gaps.map((gap) => ({ seed, detail, gap }))),
  );

/** What a ratio does is told as it was worked out, in each of the builds. */
export function changeIsToldAsItIs(all: () => readonly Assessed[]): void {
  test('the word of a calculated gap follows from the figures that stand beside it', () => {
    const calculated = gapsOf(all()).filter(
      ({ gap }) => gap.after?.basis === 'calculated' && gap.word !== undefined,
    );
    expect(calculated.length).toBeGreaterThan(50);
    const broken = calculated.filter(({ gap }) => gap.word !== byFigures(gap));
    expect(broken.map(({ seed, detail, gap }) => `build ${seed}: ${detail.key} ${gap.name}`)).toEqual([]);
  });

  test('no short gap is left out of the headlines, and each plan says its own', () => {
    const shorts = gapsOf(all()).filter(({ gap }) => gap.word === 'short');
    expect(shorts.length).toBeGreaterThan(10);
    const bySeed = new Map(all().map((each) => [each.seed, each]));
    const hidden = shorts.filter(({ seed, detail: { about, plan }, gap }) => {
      const place = about.of === 'valve' ? String(about.cylinder) : '';
      const side = about.of === 'valve' || about.of === 'side' ? about.valve : '';
      const headlines = bySeed.get(seed)?.assessment.headlines ?? [];
      return !headlines.some(
        ({ step, sentence }) =>
          step === 'consequences' &&
          (plan === undefined || sentence.startsWith(`With the planned ${plan},`)) &&
          (new RegExp(`${gap.title} on [^:]*\\b${place}[^:]*${side}[^:]*: short`, 'i').test(sentence) ||
            // Where there is no room to tell all of them, it is named.
            new RegExp(`Also short: [^.]*${gap.title}`, 'i').test(sentence)),
      );
    });
    expect(hidden.map(({ seed, detail, gap }) => `build ${seed}: ${detail.key} ${gap.name}`)).toEqual([]);
  });

  test('a planned gap that comes out short is never told to a running engine, nor a fitted one to the box', () => {
    const wrong = all().flatMap(({ seed, assessment }) =>
      assessment.notToRun
        .filter(({ what, sentence }) => (what === 'fit') !== sentence.startsWith('Don’t fit the planned'))
        .map(({ sentence }) => `build ${seed}: ${sentence}`),
    );
    expect(wrong).toEqual([]);
  });

  test('what is not known is told only where the call asks what a ratio does', () => {
    const told = all().filter(({ assessment }) =>
      assessment.headlines.some(({ id }) => id === 'headline:change:not-known'),
    );
    expect(told.length).toBeGreaterThan(10);
    const goals = new Set(told.map(({ evidence }) => evidence.call.goal));
    expect([...goals].sort()).toEqual(['choose-ratio', 'clearances-after-a-change']);
  });

  test('no sentence stands twice among the headlines and what is not to be run or fitted', () => {
    const twice = all().filter(({ assessment: { headlines, notToRun } }) => {
      const said = [...headlines.filter(({ step }) => step === 'consequences'), ...notToRun];
      return new Set(said.map(({ sentence }) => sentence)).size < said.length;
    });
    expect(twice.map(({ seed }) => seed)).toEqual([]);
  });
}
