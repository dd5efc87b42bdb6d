import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { VALVE_GEARS } from '../../../../shared/schemas/words.ts';
import { isWithin } from '../../kit/within.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { ratiosOfBuild } from '../common/build-ratios.ts';
import { BUILD, type KeptSet, STEPS } from '../common/kept.ts';
import { keyOfFigures } from '../common/key-of-figures.ts';
import { listed, ratioSaid } from '../common/said.ts';
import type {
  PreloadEvidence,
  PushrodEvidence,
  SetEvidence,
  StandEvidence,
  TurnsEvidence,
} from '../evidence/kept-sums.ts';
import type { Evidence } from '../evidence.ts';
import { GEAR_PLANS } from '../gear/plans.ts';
import { ORDINARY } from '../ratio/compared/bands.ts';
import { foundOff, hotOff, solidOff, takenOff, wantedOff } from './against-lash.ts';
import { armOff, liftOff } from './against-lift.ts';
import type { Off } from './off.ts';
import { ASKS, CHOICES, TESTS } from './sum-words.ts';
import type { TurnMade } from './turn-made.ts';

type Threaded = PreloadEvidence | TurnsEvidence;

const ADJUSTERS = {
  'stud-nut': 'a nut on the stud',
  'cup-screw': 'a screw at the pushrod',
  'valve-end-screw': 'a screw at the valve',
} as const;

function mountOff({ mount }: Threaded, { engine: { mounting } }: Evidence): Off[] {
  const isOff =
    (mounting === 'stud' && mount !== 'stud-nut') || (mounting === 'shaft' && mount === 'stud-nut');
  return isOff
    ? [
        {
          said: `The build says rockers on a ${mounting}; the sum was made for ${ADJUSTERS[mount]}.`,
          key: `${mounting}-${mount}`,
        },
      ]
    : [];
}

function ratioOff(ratio: number | undefined, evidence: Evidence): Off[] {
  const sold = ratiosOfBuild(evidence);
  return ratio === undefined || sold.length === 0 || sold.some((each) => isWithin(ratio / each - 1, ORDINARY))
    ? []
    : [
        {
          said: `The build’s rockers are ${listed(sold.map(ratioSaid))}; the sum was made with ${ratioSaid(ratio)}.`,
          key: keyOfFigures('ratio', ...sold, ratio),
        },
      ];
}

/** The part of a step that each is worked out in, and what an engine without it has not got. */
const PARTS: Readonly<Record<SetEvidence['of'], { readonly part: string; readonly none: string }>> = {
  preload: { part: 'lifter-preload', none: 'no lifter that an adjuster presses' },
  turns: { part: 'adjuster', none: 'no adjuster that is turned' },
  pushrod: { part: 'pushrod-length', none: 'no pushrod' },
  stand: { part: 'stand-height', none: 'no stand' },
  heat: { part: 'lash-hot-cold', none: 'no pushrod that grows with heat' },
  follower: { part: 'follower-ratio', none: 'no follower' },
};

/** What this valve gear hasn’t got; nobody needs to say pushrods and rockers, and a follower’s sum then asks nothing. */
function gearOff({ of }: SetEvidence, { engine: { gear } }: Evidence): Off[] {
  const { part, none } = PARTS[of];
  if (gear === undefined || !GEAR_PLANS[gear].parts.includes(part)) return [];
  const named = VALVE_GEARS[gear].toLowerCase();
  // Some have a screw, others a pad or shim: what a turn of theirs does is not worked out.
  if (gear === 'finger-follower' && of === 'turns')
    return [
      {
        said: `The build says ${named}: what a turn of a screw at their pivot does is not worked out.`,
        key: gear,
      },
    ];
  return [{ said: `The build says ${named}: there is ${none}.`, key: gear }];
}

/** A hydraulic lifter wants its preload in the pushrod’s length, and no lash out of it. */
function rodOff(set: PushrodEvidence, evidence: Evidence): Off[] {
  if (!isHydraulicLifter(evidence.engine.lifter))
    return [...solidOff(set, evidence), ...takenOff(set, evidence), ...ratioOff(set.ratio, evidence)];
  if (set.lashOff === true)
    return [{ said: 'The build says hydraulic lifters; a lash was taken off the length.', key: 'hydraulic' }];
  return (set.added ?? 0) > 0
    ? []
    : [{ said: 'The build says hydraulic lifters; no preload was added to the length.', key: 'hydraulic' }];
}

function standOff({ netLift, pivotToTip }: StandEvidence, evidence: Evidence): Off[] {
  const onStud: Off[] =
    evidence.engine.mounting === 'stud'
      ? [{ said: 'The build says rockers on a stud: there is no stand.', key: 'stud' }]
      : [];
  return [...onStud, ...liftOff(netLift, evidence), ...armOff(pivotToTip, evidence)];
}

/** What a sum was made with that the build has otherwise, as it is now. */
function offOf({ set, line }: KeptSet, made: TurnMade, evidence: Evidence): Off[] {
  const gear = gearOff(set, evidence);
  if (gear.length > 0) return gear;
  switch (set.of) {
    case 'turns':
      return [
        ...mountOff(set, evidence),
        ...ratioOff(set.ratio, evidence),
        ...wantedOff(set, made, evidence),
      ];
    case 'preload':
      return [...mountOff(set, evidence), ...ratioOff(set.ratio, evidence)];
    case 'pushrod':
      return rodOff(set, evidence);
    case 'stand':
      return standOff(set, evidence);
    case 'heat':
      return [
        ...hotOff(set, evidence),
        ...foundOff({ set, line }, evidence),
        ...ratioOff(set.ratio, evidence),
      ];
    case 'follower':
      return [];
  }
}

/**
 * A sum that was made with other figures than the build has now is asked about, and nothing is told of it until then:
 * whichever of the two was said later, one of them was said wrong, or put right since.
 */
export function againstBuild(
  kept: KeptSet<SetEvidence>,
  made: TurnMade,
  evidence: Evidence,
): AssessedQuestion[] {
  const { id, set } = kept;
  const off = offOf(kept, made, evidence);
  if (off.length === 0) return [];
  return [
    asked(
      {
        code: 'sum-unlikely',
        weight: 'strong',
        ask: ASKS[set.of],
        size: off.map(({ said }) => said).join(' '),
        test: TESTS[set.of],
        byLooking: true,
        restsOn: [],
      },
      {
        about: BUILD,
        step: STEPS[set.of],
        among: [id, ...off.map(({ key }) => key)].join(':'),
        answers: evidence.answers,
        choices: CHOICES,
      },
    ),
  ];
}
