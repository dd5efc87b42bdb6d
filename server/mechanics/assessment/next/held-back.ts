import type { AssessedQuestion, Assessment, Headline, Judgement, NotToRun } from '../assessment.ts';
import { isAsked } from '../common/is-asked.ts';
import { afterTheStop } from '../common/way-out.ts';
import type { Details } from '../details.ts';
import { markId, wantsMark } from '../marks/said.ts';
import { oddLacks } from '../sheet/odd/odd-judgement.ts';
import type { SheetOddDetail } from '../sheet/rows/detail.ts';
import { LOOKED_FOR_AGAIN } from '../workings/said.ts';

const question = (each: AssessedQuestion): AssessedQuestion =>
  isAsked(each)
    ? each
    : {
        ...each,
        test: afterTheStop(each.test),
        ...(each.testAtBench === undefined ? {} : { testAtBench: afterTheStop(each.testAtBench) }),
      };

const notToRun = (gap: NotToRun): NotToRun =>
  gap.atOnce === true
    ? gap
    : {
        ...gap,
        wayOut: afterTheStop(gap.wayOut),
        ...(gap.wayOutAtBench === undefined ? {} : { wayOutAtBench: afterTheStop(gap.wayOutAtBench) }),
      };

const change = (details: Details['change']): Details['change'] =>
  details.map((each) =>
    each.adjusters === '' ? each : { ...each, adjusters: afterTheStop(each.adjusters) },
  );

/**
 * What a mark is stays; what follows from it waits with the rest of its advice. Which way an adjuster is turned is not
 * told at all, and that zero is looked for again is told once it may be.
 */
function headlines({ headlines: all, judgements }: Assessment): Headline[] {
  return all.flatMap((each) => {
    if (each.id === 'headline:working:turns') return [];
    const mark = each.id.startsWith('headline:mark:')
      ? judgements.find(({ id }) => id === each.judgementId)
      : undefined;
    if (mark !== undefined) return { ...each, sentence: mark.sentence };
    return each.id === 'headline:working:preload'
      ? { ...each, sentence: each.sentence.replace(LOOKED_FOR_AGAIN, '') }
      : each;
  });
}

/** Which valve is set when is told again once anything may be set. */
const lash = (detail: Details['lash']): Details['lash'] => ({
  ...detail,
  setting: { said: [afterTheStop('which valve is set when, by the firing order.')], lacks: [], rows: [] },
});

const marks = (detail: Details['marks']): Details['marks'] => ({
  ...detail,
  valves: detail.valves.map((valve) =>
    valve.advice === undefined ? valve : { ...valve, advice: afterTheStop(valve.advice) },
  ),
});

const swapLater = <Odd extends { readonly swap?: string }>(odd: Odd): Odd =>
  odd.swap === undefined ? odd : { ...odd, swap: afterTheStop(odd.swap) };

/** What is read with the engine turned waits; what is asked or looked at stays. */
const noise = (detail: Details['noise']): Details['noise'] => {
  const later = <Check extends Details['noise']['checks'][number]>(check: Check): Check =>
    check.turns ? { ...check, sentence: afterTheStop(check.sentence) } : check;
  const { nearest } = detail;
  return {
    ...detail,
    checks: detail.checks.map(later),
    ...(nearest === undefined ? {} : { nearest: { ...nearest, check: later(nearest.check) } }),
  };
};

const sheet = (detail: Details['sheet']): Details['sheet'] => ({
  ...detail,
  sides: detail.sides.map((side) => ({ ...side, odd: side.odd.map(swapLater) })),
});

/** What a mark lacks, while nothing is turned. */
const MARK_LATER = 'what another mark tells, once the stop is gone';

/** Of what a valve lacks to be told from its siblings the swap waits; the rest is named as a thing, not as work. */
function judgement(
  each: Judgement,
  odds: readonly SheetOddDetail[],
  wantMarks: ReadonlySet<string>,
): Judgement {
  // Another mark is made by turning it: nothing is asked for before the stop is gone.
  if (wantMarks.has(each.id)) return { ...each, lacks: [MARK_LATER] };
  const odd = odds.find(({ judgementId }) => judgementId === each.id);
  return odd === undefined ? each : { ...each, lacks: oddLacks(swapLater(odd)) };
}

/**
 * What is said while a stop stands: tests, swaps, the setting of adjusters and the way out of what is only not to be run
 * wait, each with its words; what takes looking or asking alone stays as it is.
 */
export function heldBack(assessment: Assessment): Assessment {
  const { details } = assessment;
  const odds = details.sheet.sides.flatMap(({ odd }) => odd);
  const wantMarks = new Set(
    details.marks.valves.filter((valve) => wantsMark(valve) !== undefined).map(markId),
  );
  return {
    ...assessment,
    questions: assessment.questions.map(question),
    judgements: assessment.judgements.map((each) => judgement(each, odds, wantMarks)),
    notToRun: assessment.notToRun.map(notToRun),
    headlines: headlines(assessment),
    details: {
      ...details,
      change: change(details.change),
      sheet: sheet(details.sheet),
      lash: lash(details.lash),
      marks: marks(details.marks),
      noise: noise(details.noise),
    },
  };
}
