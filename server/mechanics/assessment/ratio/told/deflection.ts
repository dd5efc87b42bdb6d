import { allowance, usualDeflection } from '../../../kit/allowances.ts';
import { againstUsual } from '../../../ratio-readings/deflection.ts';
import type { AssessedQuantity, AssessedQuestion, Judgement } from '../../assessment.ts';
import { firstSaid } from '../../common/first-said.ts';
import { bareInches, inches, valveSubject } from '../../common/said.ts';
import type { Evidence, Spring } from '../../evidence.ts';
import type { GroupExplained } from '../compared/explain.ts';
import type { SetUpKnown } from '../compared/known.ts';
import { halfWidthOf } from '../read/intervals.ts';
import { lackSaid } from '../read/lack-said.ts';
import { deflectionAsked } from './deflection-asked.ts';
import { ratioWithin } from './ratio-said.ts';

interface Pair {
  readonly light: SetUpKnown;
  readonly running: SetUpKnown;
}

interface Deflection {
  readonly lift: number;
  readonly half: number;
  readonly ratio: number;
  readonly ratioHalf: number;
}

function newestOn(spring: Spring, { known }: GroupExplained): SetUpKnown | undefined {
  const lifted = known.filter(({ read, result }) => read.setUp.spring === spring && result !== undefined);
  return lifted.findLast(({ lacks }) => lacks.length === 0) ?? lifted.at(-1);
}

/** Same lifter, same lash, same zero; else the difference is not the spring's alone. */
function lacksOf({ light, running }: Pair): string[] {
  const [a, b] = [light.read.setUp, running.read.setUp];
  return [
    ...new Set([
      ...[...light.lacks, ...running.lacks].map(lackSaid),
      ...(a.lash === b.lash ? [] : ['both springs read at the same lash']),
      ...(a.lifter === b.lifter ? [] : ['both springs read on the same lifter']),
      ...(b.lifter === 'hydraulic' ? ['a solid lifter: a hydraulic one sinks under the running spring'] : []),
    ]),
  ];
}

/** One indicator reads both: of its limit half goes out in the difference. */
function deflectionOf({ light, running }: Pair): Deflection | undefined {
  const [a, b] = [light.read.lift?.read, running.read.lift?.read];
  const lobe = light.read.lobe.value;
  if (a === undefined || b === undefined || lobe === undefined) return undefined;
  const [one, other] = [
    halfWidthOf(light.read.valve.used, light.read.setUp),
    halfWidthOf(running.read.valve.used, running.read.setUp),
  ];
  const half = Math.max(Math.sqrt(one ** 2 + other ** 2 - one * other), allowance('repeat') / 2);
  return { lift: a - b, half, ratio: (a - b) / lobe, ratioHalf: half / lobe };
}

/** Lash was in one of the two, or the zero had moved: their difference is not the spring’s. */
const READ_AGAIN =
  'both springs read with the lash out and the dial back at zero; the one that was not is put right in its set-up, or struck out and read again';

function quantities(
  explained: GroupExplained,
  found: Deflection,
  lacks: readonly string[],
  restsOn: readonly string[],
) {
  const of = (code: string, name: string, dimension: 'length' | 'ratio', value: number, half: number) => ({
    id: `${code}:${explained.group.key}`,
    name,
    about: valveSubject(explained.group),
    dimension,
    value,
    low: value - half,
    high: value + half,
    basis: 'measured' as const,
    conditions: ['light spring less running spring'],
    lacks,
    restsOn,
  });
  return [
    of('deflection', 'Deflection at the valve', 'length', found.lift, found.half),
    of('deflection-ratio', 'Deflection as ratio', 'ratio', found.ratio, found.ratioHalf),
  ];
}

const BESIDE = {
  less: 'less than usual: ',
  more: 'more than usual: ',
  usual: '',
  none: '',
} as const;

const MOUNTED = { stud: 'on studs', pedestal: 'on pedestals', shaft: 'on a shaft' } as const;

function judgement(
  evidence: Evidence,
  explained: GroupExplained,
  found: Deflection,
  lacks: readonly string[],
  restsOn: readonly string[],
): Judgement {
  const { mounting } = evidence.engine;
  const { from, to, source } = usualDeflection(mounting);
  const usual = `${bareInches(from)} to ${inches(to)} is usual${mounting === undefined ? '' : ` ${MOUNTED[mounting]}`}`;
  const within = `${inches(found.lift)} ± ${bareInches(found.half)}`;
  const size =
    found.lift <= 0
      ? `The running spring takes nothing off the lift that this indicator tells (${within})`
      : `The running spring takes ${within} off the lift, ${ratioWithin(found.ratio, found.ratioHalf)} of ratio`;
  const beside = BESIDE[againstUsual(found.lift, found.half, { from, to })];
  return {
    id: `usual-deflection:${explained.group.key}`,
    about: valveSubject(explained.group),
    against: { to: 'usual-deflection', low: from, high: to, source },
    sentence:
      lacks.length === 0
        ? `${size}; ${beside}${usual}.`
        : `Light and running spring are not set against each other yet. ${firstSaid(lacks)}`,
    lacks,
    restsOn,
  };
}

const NOTHING = { quantities: [], judgements: [], questions: [] };

/** Running against light on one valve is the deflection, as a lift and as ratio; a running ratio meets no mark. */
export function deflection(
  evidence: Evidence,
  explained: GroupExplained,
): { quantities: AssessedQuantity[]; judgements: Judgement[]; questions: AssessedQuestion[] } {
  const [light, running] = [newestOn('light', explained), newestOn('running', explained)];
  if (light === undefined || running === undefined) return NOTHING;
  const pair = { light, running };
  const found = deflectionOf(pair);
  if (found === undefined) return NOTHING;
  const open = lacksOf(pair);
  const restsOn = [...light.read.valve.used, ...running.read.valve.used].map(({ id }) => id).sort();
  const questions = open.length > 0 ? [] : deflectionAsked(evidence, explained, { ...found, restsOn });
  const lacks = [
    ...open,
    ...(questions.some(({ answered }) => answered?.found === true) ? [READ_AGAIN] : []),
  ];
  const all = quantities(explained, found, lacks, restsOn);
  return {
    quantities: all,
    judgements: [judgement(evidence, explained, found, lacks, restsOn)],
    questions,
  };
}
