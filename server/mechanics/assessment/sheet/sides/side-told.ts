import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence, Side } from '../../evidence.ts';
import { lobesUnlikeOf } from '../lobes/lobe-unlike.ts';
import type { SheetRatioDetail, SheetSideDetail } from '../rows/detail.ts';
import type { SheetRow } from '../rows/rows.ts';
import { apartOf, cleanTold, othersTold } from './side-clean.ts';
import { isOff, type Level, levelOf, lobesOffCard, sidesOf } from './side-level.ts';
import { lobesTold } from './side-lobes.ts';
import { nameOfSide } from './side-name.ts';
import { offTold } from './side-off.ts';
import type { Told } from './side-words.ts';

const joined = (told: readonly Told[]): Told => ({
  judgements: told.flatMap(({ judgements }) => judgements),
  questions: told.flatMap(({ questions }) => questions),
});

interface Sides {
  readonly sides: readonly SheetSideDetail[];
  readonly ratios: readonly SheetRatioDetail[];
  /** Sides with a valve in doubt. */
  readonly waiting: readonly Side[];
}

/** Those of a side that are neither odd nor asked about, where they are most of it and have a middle. */
function othersOf(
  evidence: Evidence,
  rows: readonly SheetRow[],
  { side, spring, read }: Level,
  { sides, ratios }: Pick<Sides, 'sides' | 'ratios'>,
): Level[] {
  const own = sides.find((each) => sideOfValve(each.side) === side && each.spring === spring);
  if (own === undefined || own.noMiddle !== undefined || lobesUnlikeOf(own).length > 0) return [];
  const out = new Set([...own.odd, ...own.lobesDown].map(placeOf));
  const level = levelOf(
    evidence,
    own,
    rows.filter((row) => !out.has(placeOf(row))),
    ratios,
  );
  return level === undefined || level.count === read || 2 * level.count <= read || isOff(level)
    ? []
    : [{ ...level, named: nameOfSide(evidence, level) }];
}

/**
 * What all valves of a side say together: that none stands out, how their ratio stands to what they are sold as, that a
 * whole side is off, or that every lobe is. What is asked of the whole side already, and
 * strongly, is not asked a second way.
 *
 * Source: the bands of a light-spring ratio and what siblings differ by, common practice, no published source.
 */
export function sidesTold(
  evidence: Evidence,
  rows: readonly SheetRow[],
  { sides, ratios, waiting }: Sides,
  raised: readonly AssessedQuestion[],
): Told {
  const isAskedOf = (restsOn: readonly string[]) =>
    raised.some(
      ({ about, answered, weight, restsOn: own }) =>
        about.of !== 'valve' &&
        weight === 'strong' &&
        answered === undefined &&
        own.some((id) => restsOn.includes(id)),
    );
  const levels = sides.flatMap((side) => {
    const level = levelOf(evidence, side, rows, ratios);
    // Valves in two groups have no middle to speak of.
    if (level === undefined || side.groups !== undefined) return [];
    // Of a side with a valve in doubt nobody can say that none stands out.
    const odd = side.odd.length > 0 || side.lobesDown.length > 0 || waiting.includes(level.side);
    return [{ level: { ...level, odd: side.odd.length }, odd }];
  });
  const off = offTold(
    evidence,
    levels.map(({ level }) => level).filter(isOff),
    (level) => !isAskedOf(level.restsOn),
  );
  const clean = levels
    // What may be one number carried over says nothing of how alike they are.
    .filter(({ level, odd }) => !odd && !isOff(level) && !isAskedOf(level.restsOn))
    .map(({ level }) => ({ ...level, named: nameOfSide(evidence, level) }));
  const others = levels
    .filter(({ level, odd }) => odd && !isOff(level) && !isAskedOf(level.restsOn))
    .flatMap(({ level }) => othersOf(evidence, rows, level, { sides, ratios }));
  const lobes = lobesOffCard(evidence, rows).map((each) =>
    lobesTold(evidence, each, !isAskedOf(each.restsOn)),
  );
  const apart = sidesOf(levels.map(({ level }) => level).filter((level) => !isOff(level))).flatMap(apartOf);
  const told = [...cleanTold(clean), ...others.map(othersTold), ...apart];
  return joined([off, { judgements: told, questions: [] }, ...lobes]);
}
