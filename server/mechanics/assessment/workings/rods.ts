import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance, count, USUAL_RATIO } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { medianKnown } from '../../valve-sheet/siblings.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { byId, byPlace, inches, nominalSaid, placeOf, valveSubject } from '../common/said.ts';
import { usableLash } from '../common/usable-lash.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';

/** How much longer a pushrod than those of its side would make what was read; negative where shorter. */
interface Longer {
  readonly place: ValvePlace;
  readonly by: number;
  /** `preload .050 in more` */
  readonly said: string;
  /** ` at a ratio of 1.5, which nobody has said` */
  readonly at?: string;
  readonly entryIds: readonly string[];
}

/** Pushrods are kept in steps; less than this apart is reading. */
const LEAST = allowance('pushrod-differs');
/** Two that are off by as much, the other way round, are taken for one swap. */
const ALIKE = allowance('pushrod-swap');
/** So many others of its side have to agree. */
const OTHERS = count('others-agree');

/** What one valve was read at, however often. */
interface Set {
  readonly place: ValvePlace;
  readonly value: number;
  readonly entryIds: readonly string[];
}

const moreOrLess = (name: string, off: number): string =>
  `Its ${name} is ${inches(Math.abs(off))} ${off > 0 ? 'more' : 'less'} than in the middle of its side`;

/** Those that stand off the middle of the others of their side, by what a pushrod would make. */
function offSide(name: string, sets: readonly Set[], rodOf: (off: number) => number): Longer[] {
  return sets.flatMap(({ place, value, entryIds }) => {
    const others = sets.filter(
      (each) =>
        placeOf(each.place) !== placeOf(place) && sideOfValve(each.place.valve) === sideOfValve(place.valve),
    );
    const middle = medianKnown(others.map((each) => each.value));
    if (middle === undefined || others.length < OTHERS) return [];
    const off = value - middle;
    const by = rodOf(off);
    return Math.abs(by) < LEAST - EQUAL ? [] : [{ place, by, entryIds, said: moreOrLess(name, off) }];
  });
}

/** Repeats of one valve are one figure, their middle: they are no siblings of one another. */
function preloads({ sheet }: Evidence): Set[] {
  const read = sheet
    .filter(({ standing, kind, arms }) => standing && kind === 'preload' && arms === 'these')
    .toSorted(byId);
  const places = [
    ...new Map(
      read.map(({ cylinder, valve }) => [placeOf({ cylinder, valve }), { cylinder, valve }]),
    ).values(),
  ];
  return places.flatMap((place) => {
    const own = read.filter((each) => placeOf(each) === placeOf(place) && each.reading.value !== undefined);
    const value = medianKnown(own.map(({ reading }) => reading.value));
    return value === undefined ? [] : [{ place, value, entryIds: own.map(({ id }) => id) }];
  });
}

/** Lash is set at its adjuster; only where there is none does it tell of the pushrod. */
function lashes(evidence: Evidence): Set[] {
  if (evidence.engine.mounting !== 'pedestal') return [];
  const places = [...new Map(evidence.lash.map((line) => [placeOf(line), line])).values()];
  return places.flatMap((place) => {
    const line = usableLash(evidence, place);
    return line?.gap.value === undefined || line.gap.value === 0
      ? []
      : [
          {
            place: { cylinder: place.cylinder, valve: place.valve },
            value: line.gap.value,
            entryIds: [line.id],
          },
        ];
  });
}

/** The other valve of its cylinder that is off the other way by as much. */
const partnerOf = ({ place, by }: Longer, all: readonly Longer[]): Longer | undefined =>
  all.find(
    (each) =>
      each.place.cylinder === place.cylinder &&
      sideOfValve(each.place.valve) !== sideOfValve(place.valve) &&
      Math.abs(each.by + by) < ALIKE,
  );

const lengthSaid = (by: number): string => `${inches(Math.abs(by))} ${by > 0 ? 'longer' : 'shorter'}`;

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'It has another length',
    changes: 'The right one goes in, and what it made is read again on that valve.',
  },
  {
    code: 'not-found',
    label: 'Measured: as long as the others',
    changes: 'The lifter’s seat, the stand and the height of the valve are looked at next.',
  },
];

/**
 * A valve whose preload, or lash where nothing sets it, stands off its side by what a pushrod of another length makes: the
 * length of its own pushrod is asked, and whether the two of its cylinder were swapped.
 *
 * Equation: longer by = preload − middle of the others; = −(lash − middle) / ratio
 *
 * Source: by the lever about the valve tip, derived here; steps of lengths by common practice, no published source.
 */
export function rodQuestions(evidence: Evidence): AssessedQuestion[] {
  const said = evidence.rockers.soldAs ?? evidence.card.assumedRatio;
  const ratio = said ?? USUAL_RATIO;
  const all = [
    ...offSide('preload', preloads(evidence), (off) => off),
    ...offSide('lash', lashes(evidence), (off) => -off / ratio).map((each) => ({
      ...each,
      ...(said === undefined ? { at: ` at a ratio of ${nominalSaid(ratio)}, which nobody has said` } : {}),
    })),
  ].toSorted((a, b) => byPlace(a.place, b.place));
  return all.map((longer) => {
    const partner = partnerOf(longer, all);
    const swapped =
      partner === undefined
        ? ''
        : ` ${placeOf(partner.place)} is off the other way by as much: were the two swapped?`;
    return asked(
      {
        code: 'pushrod-differs',
        weight: 'weak',
        ask: `How long is the pushrod of ${placeOf(longer.place)}?`,
        knownBy: 'pushrod-differs',
        size: `${longer.said}: one ${lengthSaid(longer.by)} makes that${longer.at ?? ''}.${swapped}`,
        test: 'take that pushrod out with its valve shut, measure it end to end, and set it beside one of its side.',
        restsOn: [...longer.entryIds, ...(partner?.entryIds ?? [])],
      },
      {
        about: valveSubject(longer.place),
        step: 'adjuster',
        answers: evidence.answers,
        choices: CHOICES,
      },
    );
  });
}
