import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { isDial } from '../../kit/lift-tools.ts';
import { inAnyUnits } from '../common/asked.ts';
import { lowerFirst, placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { READ_BACK_WRONG } from '../ratio/conditions.ts';
import type { GroupExplained } from '../ratio/explain.ts';
import { isLightSpringFirst, isSaid, lacksOfGroup, restingOn, wasRead } from '../ratio/lacking.ts';
import { lobeAgainstCard, lobesOff } from '../ratio/lobe-card.ts';
import { cardIsOther, isDown, isOpen, readOthers } from '../ratio/lobe-low.ts';
import { SINKING } from '../ratio/sinking.ts';
import { MUST, MUST_TURN, type Need, need } from './need.ts';
import { oneValve } from './one-valve.ts';

const PASSES = 3;

/** As many as are left to be read. */
const passesLeft = (count: number): string =>
  ['three passes', 'two more passes', 'one more pass'][count] ?? 'three passes';

function ofPasses({ known, group }: GroupExplained): Need[] {
  const last = known.at(-1)?.read;
  if (last === undefined) return [];
  const at = placeOf(group);
  const counts = [last.lobe.passes.used.length, last.valve.used.length];
  const of = (code: string, name: string, count: number, ask: string) =>
    need(
      `${code}:${group.key}`,
      `${name} ${at}: ${Math.min(count, PASSES)} of ${PASSES} passes`,
      ask,
      count >= PASSES,
      // One of the two alone is no ratio.
      { ...MUST_TURN, begun: count === 0 && counts.some((each) => each > 0) },
    );
  return [
    ...(last.setUp.lobeSource === 'indicator'
      ? [
          of(
            'lobe-passes',
            'lobe lift',
            last.lobe.passes.used.length,
            `Read the lobe lift of ${at} at the lifter, ${passesLeft(last.lobe.passes.used.length)}.`,
          ),
        ]
      : []),
    of(
      'valve-passes',
      'valve lift',
      last.valve.used.length,
      `Read the valve lift of ${at}, ${passesLeft(last.valve.used.length)}${isDial(last.setUp.tool) ? ', small hand first' : ''}.`,
    ),
  ];
}

const ENTERED_AGAIN =
  /^((?:pass \d+|passes \d[\d, and]*)(?: of the lobe)?|the reading) entered again or struck out: (.*)$/;

/** Readings that the inference has a name for go by it, so that the way to them is the same. */
function codeOf(lack: string): string {
  if (isLightSpringFirst(lack)) return 'light-spring-solid-lifter';
  if (lack.startsWith('a reading at zero lash')) return 'lash-to-zero';
  if (lack.startsWith('a reading with the plunger parallel')) return 'align-plunger';
  if (lack.startsWith('a reading on a solid or locked lifter')) return 'light-spring-solid-lifter';
  if (lack === READ_BACK_WRONG) return 'read-back';
  if (lack.startsWith('a reading of the valve lift with a tool')) return 'lift-with-a-tool';
  if (lack.startsWith('one more pass of the valve lift')) return 'one-more-pass';
  const again = ENTERED_AGAIN.exec(lack);
  if (again !== null) return `enter-again-${(again[1] ?? '').replace(/[^a-z0-9]+/g, '-')}`;
  return inAnyUnits(lack)
    .toLowerCase()
    .replace(/[^a-z]+/g, '-');
}

/** A lack as something to do. */
function askFor(at: string, lack: string): string {
  if (isSaid(lack)) return `Ask for ${at} ${lack}.`;
  const again = ENTERED_AGAIN.exec(lack);
  if (again !== null)
    return `Enter ${again[1]} of ${at} again, or strike ${again[1]?.startsWith('passes') === true ? 'them' : 'it'} out with the reason: ${again[2]}.`.replace(
      /([.?!”])\.$/,
      '$1',
    );
  if (lack === READ_BACK_WRONG)
    return `${at}: put right the entry that was wrong, then read the entries back once more.`;
  if (lack === SINKING)
    return `${at}: put a solid lifter in, or lock this one solid at the same seat height, and take the passes again: these sink.`;
  if (/^(one more pass|a reading) /.test(lack)) return `${at}: take ${lack}.`;
  return `Wanted for ${at}: ${lack}.`;
}

/** What needs nothing turned: to say, to enter again, to read back. */
const turnsNothing = (lack: string): boolean =>
  isSaid(lack) || ENTERED_AGAIN.test(lack) || lack === READ_BACK_WRONG;

/** An open doubt is asked as a question; what was found to be so is entered again, by the name it has in the headline. */
const isAskedFor = (lack: string, doubts: readonly string[]): boolean =>
  !doubts.includes(lack) || ENTERED_AGAIN.test(lack);

/** It is set up as wanted, and no pass is read yet: only the passes are lacking. */
function isSetUpForLight({ known }: GroupExplained): boolean {
  const last = known.at(-1);
  if (last === undefined || wasRead(last)) return false;
  const { spring, lifter, lash } = last.read.setUp;
  return spring === 'light' && (lifter === 'solid' || lifter === 'locked') && lash === 'zero';
}

function ofLacks(explained: GroupExplained): Need[] {
  const { group } = explained;
  const resting = restingOn(explained);
  // Which of several set-ups holds is asked as a question too.
  const open = resting?.differs?.question.answered === undefined ? resting?.differs?.question.ask : undefined;
  const asked = [...(resting?.doubts ?? []), ...(open === undefined ? [] : [`the answer to “${open}”`])];
  const lacks =
    resting === undefined
      ? isSetUpForLight(explained)
        ? []
        : lacksOfGroup(explained).filter((lack) => ENTERED_AGAIN.test(lack) || isLightSpringFirst(lack))
      : resting.lacks.filter((lack) => isAskedFor(lack, asked) && !lack.startsWith('a pass of'));
  // Where the headline asks a doubt first, so does what is next.
  const begun = explained.known.some(wasRead) && lacks[0] === lacksOfGroup(explained)[0];
  return lacks.map((lack) =>
    need(`${codeOf(lack)}:${group.key}`, `${placeOf(group)}: ${lack}`, askFor(placeOf(group), lack), false, {
      ...(turnsNothing(lack) ? MUST : MUST_TURN),
      begun,
      ...(isSaid(lack) ? { askAtBench: `Say for ${placeOf(group)} ${lack}.` } : {}),
    }),
  );
}

/** A lobe well under its card: those beside it tell whether it is the lobe or the card. */
function ofLobes(evidence: Evidence, explained: readonly GroupExplained[]): Need[] {
  const known = [...new Set(explained.flatMap((each) => each.known))];
  const down = lobesOff(known.flatMap((each) => lobeAgainstCard(evidence, each, known, false)))
    .filter((off) => isDown(off) && isOpen(off))
    .filter((off) => !cardIsOther(explained, placeOf(off)));
  return down.map((off) =>
    need(
      `lobe-siblings:${off.cylinder}-${off.valve}`,
      `the lobes beside ${placeOf(off)}, which reads under its card`,
      `${placeOf(off)}: ${lowerFirst(readOthers(off))}`,
      false,
      { ...MUST_TURN, begun: true },
    ),
  );
}

/** Set up for its lobe alone, to tell another lobe of its side from the card: no lift is wanted of it. */
function isForLobe({ known, group }: GroupExplained, all: readonly GroupExplained[]): boolean {
  const alone = known.every(
    (each) =>
      !wasRead(each) && each.read.lobe.source === 'indicator' && each.read.lobe.passes.used.length > 0,
  );
  return (
    alone &&
    all.some(
      (other) => sideOfValve(other.group.valve) === sideOfValve(group.valve) && other.known.some(wasRead),
    )
  );
}

/** What the ratio lacks, valve by valve; strong doubts are asked as questions. */
export function ofRatio(evidence: Evidence, explained: readonly GroupExplained[]): Need[] {
  if (explained.length === 0)
    return [need('set-up', 'a reading of the ratio on the engine', oneValve(evidence), false, MUST_TURN)];
  return [
    ...explained.flatMap((each) => (isForLobe(each, explained) ? [] : [...ofLacks(each), ...ofPasses(each)])),
    ...ofLobes(evidence, explained),
  ];
}
