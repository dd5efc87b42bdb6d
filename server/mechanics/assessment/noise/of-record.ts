import { EQUAL } from '../../kit/nearest.ts';
import { ADJUSTER_WORDS, partSaid } from '../../lash/adjuster-words.ts';
import { growthTold } from '../../lash/growth.ts';
import type { LashGrowth } from '../../lash/types.ts';
import { LOCKING, OF_ALL, OF_ONE, WEAR } from '../../noise/causes.ts';
import { type Effect, effectOf } from '../../noise/effects.ts';
import type { Fact } from '../../noise/weigh.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { grewBy } from '../common/grew-by.ts';
import { keyOf, placeOf, valveSubject } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import type { LashDetail, LashValveDetail } from '../lash/detail.ts';
import { nutHasMoved, nutLine } from '../lash/nut-moved.ts';
import { tellsOfAdjuster } from '../lash/on-hydraulic.ts';
import type { SheetDetail } from '../sheet/rows/detail.ts';
import type { NutTold } from './nut-told.ts';
import { gapFacts } from './of-gaps.ts';
import { lobeFact, same } from './of-lobe.ts';
import { seatFacts, seatsRaised } from './of-seat.ts';

/** What other parts of the assessment have read. */
export interface NoiseRecord {
  readonly lash: LashDetail;
  readonly sheet: SheetDetail;
  /** What the lash log and the marks raise. */
  readonly raised: readonly AssessedQuestion[];
}

const inScope = (place: ValvePlace | undefined, each: ValvePlace): boolean =>
  place === undefined || same(place, each);

/** What a gap that grew speaks for, by what its nut did; not looked at, it says nothing between lock and wear. */
export const GREW: Readonly<Record<'held' | 'moved' | 'not-looked', Effect>> = {
  // The nut held: wear on that valve, or the stud came out with its nut.
  held: { for: [...WEAR, 'stud'], against: LOCKING },
  moved: { for: LOCKING, against: WEAR },
  'not-looked': { for: OF_ONE, against: [] },
};
/** Read on the base circle: what wears there would show; a worn nose never does. */
export const STAYED: Effect = { for: [], against: [...LOCKING, 'stud', 'pushrod', 'tip'] };

export const hasGrown = ({ growth }: LashValveDetail, { limit }: LashDetail): boolean =>
  growth?.low !== undefined && growth.low > limit.value + EQUAL;

/** What the adjuster did meanwhile, as the end of a sentence. */
const nutSaid = ({ adjuster }: LashDetail, nut: 'held' | 'moved' | 'not-looked'): string =>
  `${nut === 'not-looked' ? '' : 'and the '}${partSaid(adjuster, nut)}`;

const lineIds = ({ lines }: LashValveDetail): string[] => lines.map(({ id }) => id).sort();

/** What the log says of the nut, unless an answer says otherwise: then what was settled, or nothing. */
const nutOf = (logged: 'held' | 'moved' | 'not-looked', { open, question, counts }: NutTold) =>
  open ? 'not-looked' : question !== undefined && (counts === 'held' || counts === 'moved') ? counts : logged;

/** A gap that did not grow past the ordinary; within the steps of the feelers neither growth nor none is told. */
function stayedSaid(place: string, growth: LashGrowth | undefined): string {
  if (growth === undefined) return `the gap of ${place} has not grown`;
  const told = growthTold(growth);
  if (told === 'cannot-tell')
    return `whether the gap of ${place} grew can’t be told, feelers tell no finer; it did not grow past the ordinary`;
  return told === 'grew'
    ? `the gap of ${place} grew by ${grewBy(growth)}, which is ordinary`
    : `the gap of ${place} has not grown`;
}

function gapFact(valve: LashValveDetail, lash: LashDetail, told: NutTold): Fact[] {
  const { growth, hydraulic } = valve;
  if (!tellsOfAdjuster(hydraulic)) return [];
  const [key, restsOn] = [`lash:${keyOf(valveSubject(valve))}`, lineIds(valve)];
  if (growth?.heatDiffers)
    return [
      {
        for: ['setting'],
        against: [],
        key,
        restsOn,
        text: `Lash log: ${placeOf(valve)} was set and found at different heat`,
      },
    ];
  if (growth?.low === undefined || growth.high === undefined) return [];
  if (hasGrown(valve, lash))
    return [
      {
        ...GREW[nutOf(growth.nut, told)],
        key,
        restsOn,
        text: `Lash log: the gap of ${placeOf(valve)} grew by ${grewBy(growth)}, ${nutSaid(lash, nutOf(growth.nut, told))}`,
      },
    ];
  if (growth.high > lash.limit.value + EQUAL) return [];
  return [{ ...STAYED, key, restsOn, text: `Lash log: ${stayedSaid(placeOf(valve), growth)}` }];
}

/** Its gap grew, or its lock let go and was not set and found held since. */
const isLoose = (valve: LashValveDetail, lash: LashDetail): boolean =>
  hasGrown(valve, lash) || nutHasMoved(valve, lash);

/** What was answered in the words of the log is one fact, not two; where it says otherwise, that is asked. */
function nutFact(valve: LashValveDetail, lash: LashDetail, { question, counts }: NutTold): Fact[] {
  const line = nutLine(valve);
  if (question !== undefined) return [];
  // Where the gap grew its nut is told with that.
  if (line === undefined || line.nut === 'not-looked' || line.nut === counts || hasGrown(valve, lash))
    return [];
  return [
    {
      ...effectOf('noise-nut', line.nut),
      key: `nut:${keyOf(valveSubject(valve))}`,
      restsOn: [line.id],
      text: `Lash log: the ${ADJUSTER_WORDS[lash.adjuster].part} of ${placeOf(valve)} ${line.nut === 'moved' ? 'had moved' : 'had not moved'}`,
    },
  ];
}

function markFacts({ raised }: NoiseRecord, place: ValvePlace | undefined): Fact[] {
  const asked = raised.filter(
    ({ step, answered, about }) =>
      step === 'geometry' && answered?.found !== false && about.of === 'valve' && inScope(place, about),
  );
  const places = [...new Set(asked.flatMap(({ about }) => (about.of === 'valve' ? [placeOf(about)] : [])))];
  return places.map((name) => ({
    for: ['tip', 'roller'],
    against: [],
    key: `mark:${name}`,
    restsOn: [
      ...new Set(
        asked.flatMap(({ about, restsOn }) =>
          about.of === 'valve' && placeOf(about) === name ? restsOn : [],
        ),
      ),
    ].sort(),
    text: `Tip mark of ${name}: its width or its place is asked about`,
  }));
}

/** All of them grew alike: that is not one part. */
const everywhere = ({ raised }: NoiseRecord): AssessedQuestion | undefined =>
  raised.find(({ code }) => code === 'lash-grew-everywhere');

/** Valves that stayed as they were beside those that did not: it is not what all have in common. */
function othersStayed({ lash }: NoiseRecord, told: readonly LashValveDetail[]): Fact[] {
  const stayed = lash.valves.filter(
    (valve) =>
      !told.includes(valve) &&
      tellsOfAdjuster(valve.hydraulic) &&
      valve.growth?.high !== undefined &&
      !valve.growth.heatDiffers &&
      valve.growth.high <= lash.limit.value + EQUAL,
  );
  const [only] = stayed;
  if (only === undefined || told.every((valve) => !isLoose(valve, lash))) return [];
  return [
    {
      for: [],
      against: OF_ALL,
      key: 'lash:others',
      restsOn: stayed.flatMap(lineIds).sort(),
      text:
        stayed.length === 1
          ? `Lash log: ${stayedSaid(placeOf(only), only.growth)}`
          : `Lash log: the gaps of ${stayed.length} other valves did not grow past the ordinary`,
    },
  ];
}

/** The valves that a gap or a lobe is told of, where no one valve was named: those that grew. */
export function placesAbout(record: NoiseRecord, place: ValvePlace | undefined): ValvePlace[] {
  if (place !== undefined) return [place];
  return record.lash.valves.filter((valve) => hasGrown(valve, record.lash));
}

/**
 * What the record has of the valve that is named, else of every valve: gap, nut, lobe and mark.
 *
 * @param nut what counts of the nut
 */
export function factsOfRecord(record: NoiseRecord, place: ValvePlace | undefined, nut: NutTold): Fact[] {
  const { lash, sheet } = record;
  const logged = lash.valves.filter((valve) => inScope(place, valve));
  // A lock that let go is a lock, on however many valves; what stayed elsewhere says nothing of those.
  const loose = logged.filter((valve) => isLoose(valve, lash));
  const told = place === undefined && loose.length > 0 ? loose : logged;
  const all = loose.some((valve) => nutHasMoved(valve, lash)) ? undefined : everywhere(record);
  const about = placesAbout(record, place);
  const seats = seatsRaised(record.raised, (each) => inScope(place, each));
  const closed = (each: ValvePlace): boolean =>
    seats.some(({ about }) => about.of === 'valve' && same(about, each));
  const gaps: Fact[] =
    all === undefined
      ? [
          ...told.flatMap((valve) =>
            closed(valve) && !isLoose(valve, lash) ? [] : gapFact(valve, lash, nut),
          ),
          ...(place === undefined ? othersStayed(record, told) : []),
        ]
      : [
          {
            for: OF_ALL,
            against: OF_ONE,
            key: 'lash',
            restsOn: all.restsOn,
            text: 'Lash log: the gaps of all valves grew',
          },
        ];
  const lobes = sheet.rows
    .filter((row) => inScope(place, row))
    .flatMap((row) =>
      lobeFact(
        sheet,
        row,
        about.some((each) => same(each, row)),
      ),
    );
  return [
    ...gaps,
    ...seatFacts(seats),
    // Where the gap closed, that its lock held is told with that.
    ...told
      .filter((valve) => !closed(valve) || nutHasMoved(valve, lash))
      .flatMap((valve) => nutFact(valve, lash, nut)),
    ...lobes,
    ...gapFacts(sheet, (row) => inScope(place, row)),
    ...markFacts(record, place),
  ];
}
