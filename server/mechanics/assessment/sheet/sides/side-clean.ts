import { allowance } from '../../../kit/allowances.ts';
import type { Judgement } from '../../assessment.ts';
import { inches, ratioSaid } from '../../common/said.ts';
import { manySaid, together } from '../rows/how-many.ts';
import { isLashIn, type Level } from './side-level.ts';
import { lashLack, lashTold, plural, SPRING, standing } from './side-words.ts';

/** No valve of the side stands out: that is an answer, and is said. */
function cleanOf(level: Level): Judgement {
  const { side, spring, farthest, restsOn } = level;
  const within = `${manySaid(level)} lie within ${inches(Math.max(farthest, allowance('repeat') / 2))} of their middle`;
  return {
    id: `side:${spring}:${side}`,
    about: { of: 'side', valve: side },
    against: { to: 'siblings' },
    sentence: `No ${side} stands out${SPRING[spring]}: ${within}.${standing(level)}${lashTold(level)}`,
    lacks: level.ratio === undefined ? ['lobe lifts, or those of the card, for a ratio'] : lashLack(level),
    ...(level.ratio !== undefined && isLashIn(level) ? { again: 'lash-in' } : {}),
    restsOn,
  };
}

/** `side-others:…`: of a side of which one valve stands out or waits. */
export const SIDE_OTHERS = 'side-others:';

/** Of a side of which a valve stands out, or waits for an answer: what the others come to. */
export function othersTold(level: Level): Judgement {
  const { side, spring, farthest, restsOn, count, of, read, inSetUps = 0 } = level;
  const left = of !== undefined && read + inSetUps < of ? ` read so far (of ${of})` : '';
  return {
    id: `${SIDE_OTHERS}${spring}:${side}`,
    about: { of: 'side', valve: side },
    against: { to: 'siblings' },
    sentence: `The other ${count} ${plural(side)}${left} lie within ${inches(Math.max(farthest, allowance('repeat') / 2))} of their middle${SPRING[spring]}.${standing(level, false)}${lashTold(level)}`,
    lacks: level.ratio === undefined ? ['lobe lifts, or those of the card, for a ratio'] : lashLack(level),
    restsOn,
  };
}

/** Both sides clean, and held to be one thing: said in one go. */
function bothClean(intake: Level, exhaust: Level): Judgement[] {
  const [one, other] = [cleanOf(intake), cleanOf(exhaust)];
  const [a, b] = [intake.ratio, exhaust.ratio];
  if (a === undefined || b === undefined || ratioSaid(a.value) !== ratioSaid(b.value)) return [one, other];
  if (intake.claim?.ratio !== exhaust.claim?.ratio || intake.lash !== exhaust.lash) return [one, other];
  // Each side is short by a lash of its own.
  if (isLashIn(intake)) return [one, other];
  const farthest = Math.max(intake.farthest, exhaust.farthest, allowance('repeat') / 2);
  return [
    {
      ...one,
      id: `side:${intake.spring}:both`,
      about: { of: 'build' },
      sentence: `No valve stands out${SPRING[intake.spring]}: ${manySaid(together([intake, exhaust]))} lie within ${inches(farthest)} of the middle of their side.${standing(intake)}${lashTold(intake)}`,
      restsOn: [...one.restsOn, ...other.restsOn].sort(),
    },
  ];
}

/** The sides of which no valve stands out. */
export function cleanTold(levels: readonly Level[]): Judgement[] {
  return [...new Set(levels.map(({ spring }) => spring))].flatMap((spring) => {
    const [one, other] = levels.filter((level) => level.spring === spring);
    if (one === undefined) return [];
    return other === undefined ? [cleanOf(one)] : bothClean(one, other);
  });
}

/** Intakes and exhausts of one set, each alike, that differ from one another. */
export function apartOf([intake, exhaust]: readonly [Level, Level]): Judgement[] {
  const [one, other] = [intake.ratio, exhaust.ratio];
  if (one === undefined || other === undefined || intake.claim?.ratio !== exhaust.claim?.ratio) return [];
  // Each is short by its lash: how they stand to one another is told at zero.
  if (isLashIn(intake) || isLashIn(exhaust)) return [];
  const apart = one.low > other.high || other.low > one.high;
  const percent = Math.round(Math.abs(one.value / other.value - 1) * 100);
  if (!apart || percent < 2) return [];
  return [
    {
      id: `sides-apart:${intake.spring}`,
      about: { of: 'build' },
      against: { to: 'siblings' },
      sentence: `Intakes read ${ratioSaid(one.value)} and exhausts ${ratioSaid(other.value)}, ${percent} % apart. First: look whether they are two numbers; then read both lobes of one cylinder again.`,
      lacks: ['the numbers of both, and their lobes read again'],
      restsOn: [...intake.restsOn, ...exhaust.restsOn].sort(),
    },
  ];
}
