import { placeOf } from '../common/said.ts';
import type { GroupExplained } from '../ratio/explain.ts';
import { isSaid, LIGHT_SPRING_FIRST, restingOn } from '../ratio/lacking.ts';
import { MUST, MUST_TURN, type Need, need } from './need.ts';

const PASSES = 3;

function ofPasses({ known, group }: GroupExplained): Need[] {
  const last = known.at(-1)?.read;
  if (last === undefined) return [];
  const at = placeOf(group);
  const of = (code: string, name: string, count: number, ask: string) =>
    need(
      `${code}:${group.key}`,
      `${name} ${at}: ${Math.min(count, PASSES)} of ${PASSES} passes`,
      ask,
      count >= PASSES,
      MUST_TURN,
    );
  return [
    ...(last.setUp.lobeSource === 'indicator'
      ? [
          of(
            'lobe-passes',
            'lobe lift',
            last.lobe.passes.used.length,
            `Read the lobe lift of ${at} at the lifter, three passes.`,
          ),
        ]
      : []),
    of(
      'valve-passes',
      'valve lift',
      last.valve.used.length,
      `Read the valve lift of ${at}, three passes, small hand first.`,
    ),
  ];
}

/** Readings that the inference has a name for go by it, so that the way to them is the same. */
function codeOf(lack: string): string {
  if (lack === LIGHT_SPRING_FIRST) return 'light-spring-solid-lifter';
  if (lack.startsWith('a reading at zero lash')) return 'lash-to-zero';
  if (lack.startsWith('a reading with the plunger parallel')) return 'align-plunger';
  return lack.toLowerCase().replace(/[^a-z]+/g, '-');
}

function ofLacks(explained: GroupExplained): Need[] {
  const { group } = explained;
  const resting = restingOn(explained);
  const lacks =
    resting === undefined
      ? [LIGHT_SPRING_FIRST]
      : resting.lacks.filter((lack) => !resting.doubts.includes(lack) && !lack.startsWith('a pass of'));
  return lacks.map((lack) =>
    need(
      `${codeOf(lack)}:${group.key}`,
      `${placeOf(group)}: ${lack}`,
      isSaid(lack) ? `Ask for ${placeOf(group)} ${lack}.` : `Wanted for ${placeOf(group)}: ${lack}.`,
      false,
      isSaid(lack) ? MUST : MUST_TURN,
    ),
  );
}

/** What the ratio lacks, valve by valve; strong doubts are asked as questions. */
export function ofRatio(explained: readonly GroupExplained[]): Need[] {
  if (explained.length === 0)
    return [
      need(
        'set-up',
        'a reading of the ratio on the engine',
        'Say how it is measured (spring, lifter, lash), then read lobe lift and valve lift of one valve.',
        false,
        MUST_TURN,
      ),
    ];
  return explained.flatMap((each) => [...ofLacks(each), ...ofPasses(each)]);
}
