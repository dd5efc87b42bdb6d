import { defined } from '../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { VALVE_GEARS } from '../../../../shared/schemas/words.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { IN } from '../../kit/si.ts';
import { TUNED_BY } from '../../lash/lash-slips.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { inches, ratioSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { ORDINARY } from '../ratio/bands.ts';
import type { PreloadEvidence, SetEvidence, TurnsEvidence } from './evidence.ts';
import { BUILD, type KeptSet } from './kept.ts';
import { heatsWanting, printedLashes } from './wanted-heat.ts';

type Threaded = PreloadEvidence | TurnsEvidence;

/** Feelers come in thousandths, and a metric one is the next: common practice, no published source. */
const FEELER = 0.001 * IN;

const ADJUSTERS = {
  'stud-nut': 'a nut on the stud',
  'cup-screw': 'a screw at the pushrod',
  'valve-end-screw': 'a screw at the valve',
} as const;

function mountOff({ mount }: Threaded, { engine: { mounting } }: Evidence): string[] {
  const isOff =
    (mounting === 'stud' && mount !== 'stud-nut') || (mounting === 'shaft' && mount === 'stud-nut');
  return isOff ? [`The build says rockers on a ${mounting}; the sum was made for ${ADJUSTERS[mount]}.`] : [];
}

function ratioOff({ ratio }: Threaded, { rockers: { soldAs, planned, plannedExhaust } }: Evidence): string[] {
  const sold = [...new Set([soldAs, planned, plannedExhaust].flatMap((each) => each ?? []))];
  return sold.length === 0 || sold.some((each) => Math.abs(ratio / each - 1) <= ORDINARY + 1e-9)
    ? []
    : [
        `The build’s rockers are ${sold.map(ratioSaid).join(' and ')}; the sum was made with ${ratioSaid(ratio)}.`,
      ];
}

/** Lashes of the card that this one is not, hot or cold, and by how much it misses the nearest. */
function wantedOff(set: SetEvidence, evidence: Evidence): { readonly said: string[]; readonly by: number } {
  if (set.of !== 'turns' || set.lashWanted === undefined) return { said: [], by: 0 };
  const { lashWanted } = set;
  const { lashAt } = evidence.card;
  const printed = printedLashes(evidence);
  const by = printed.length === 0 ? 0 : Math.min(...printed.map((each) => Math.abs(each - lashWanted)));
  return by <= FEELER + EQUAL || heatsWanting(lashWanted, evidence).length > 0
    ? { said: [], by: 0 }
    : {
        by,
        said: [
          `The card’s lash is ${printed.map(inches).join(' and ')}${lashAt === undefined ? '' : `, ${lashAt}`}; the sum wants ${inches(lashWanted)}.`,
        ],
      };
}

const BUCKET: Readonly<Record<Exclude<SetEvidence['of'], 'heat'>, string>> = {
  preload: 'no adjuster that is turned',
  turns: 'no adjuster that is turned',
  pushrod: 'no pushrod',
  stand: 'no stand',
  follower: 'no follower',
};

/** What this valve gear hasn’t got. */
function gearOff({ of }: SetEvidence, { engine: { gear = 'pushrod' } }: Evidence): string[] {
  if (of === 'heat') return [];
  const named = VALVE_GEARS[gear].toLowerCase();
  if (gear === 'bucket') return [`The build says ${named}: there is ${BUCKET[of]}.`];
  return gear !== 'pushrod' && of === 'pushrod' ? [`The build says ${named}: there is ${BUCKET[of]}.`] : [];
}

/** A hydraulic lifter wants its preload in the pushrod’s length, and no lash out of it. */
function rodOff(set: SetEvidence, { engine: { lifter } }: Evidence): string[] {
  if (set.of !== 'pushrod' || !isHydraulicLifter(lifter)) return [];
  if (set.lashOff === true) return ['The build says hydraulic lifters; a lash was taken off the length.'];
  return (set.added ?? 0) > 0
    ? []
    : ['The build says hydraulic lifters; no preload was added to the length.'];
}

function offOf(set: SetEvidence, evidence: Evidence): string[] {
  const gear = gearOff(set, evidence);
  if (gear.length > 0) return gear;
  if (set.of !== 'turns' && set.of !== 'preload') return rodOff(set, evidence);
  return [...mountOff(set, evidence), ...ratioOff(set, evidence)];
}

const IS_TURN: ReadonlySet<string> = new Set(['turns', 'preload']);

const CHOICES: AssessedQuestion['answers'] = [
  { code: 'not-found', label: 'Yes, the sum is right', changes: 'The sum counts.' },
  {
    code: 'found',
    label: 'No, a figure of the sum was wrong',
    changes: 'The sum is kept again with the right one.',
  },
];

/** A sum that goes with another adjuster, ratio or lash than the build has is asked, and not told until then. A lash that is tuned is asked alone. */
export function againstBuild({ id, set }: KeptSet<SetEvidence>, evidence: Evidence): AssessedQuestion[] {
  const others = offOf(set, evidence);
  const wanted = gearOff(set, evidence).length > 0 ? { said: [], by: 0 } : wantedOff(set, evidence);
  const off = [...others, ...wanted.said];
  // A lash is tuned by so much: then the sum is asked about, and counts meanwhile.
  const isTuned = others.length === 0 && wanted.by <= TUNED_BY + EQUAL;
  return off.length === 0
    ? []
    : [
        asked(
          {
            code: 'sum-unlikely',
            weight: isTuned ? 'weak' : 'strong',
            ask: IS_TURN.has(set.of)
              ? 'Was this sum made with the adjuster, the ratio and the lash of this engine?'
              : 'Was this sum made for the lifters and the valve gear of this engine?',
            size: off.join(' '),
            test: IS_TURN.has(set.of)
              ? 'look at the adjuster, the rocker and the card; then work the turns out again, or put the build right.'
              : 'look what is in it; then work it out again, or put the build right.',
            byLooking: true,
            restsOn: [],
          },
          {
            about: BUILD,
            step: IS_TURN.has(set.of) ? 'adjuster' : 'geometry',
            ...defined({ among: id }),
            answers: evidence.answers,
            choices: CHOICES,
          },
        ),
      ];
}
