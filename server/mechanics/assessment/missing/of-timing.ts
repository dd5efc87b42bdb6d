import { listed, placeOf, upperFirst } from '../common/said.ts';
import type { Evidence, StopEvidence } from '../evidence.ts';
import { gapsGone } from '../scans/gaps-gone.ts';
import { shiftSaid } from '../timing/pointer-said.ts';
import { pointerAsked } from '../timing/questions.ts';
import { degrees, isOut, readOf, type TimingRead } from '../timing/readings.ts';
import { MUST, MUST_TURN, type Need, need, worked } from './need.ts';

/** Said with a reading, or in answer to the question. */
const isSaidShifted = (read: TimingRead, evidence: Evidence): boolean =>
  read.peaks.some(({ shifted }) => shifted === true) || pointerAsked(read, evidence).pointerWas === 'shifted';

/** What proves a pointer that was shifted is the stop, read again. */
const readAlike = ({ trueReading }: StopEvidence): Need =>
  need(
    'pointer-read',
    'the stop read alike since the pointer was shifted',
    `Read the stop again, until it reads ${degrees(trueReading)}° on both sides.`,
    false,
    MUST_TURN,
  );

/** One that is out is shifted, and the stop read until it is alike, before a lobe is read against it. */
function pointerShifted(evidence: Evidence): Need[] {
  const read = readOf(evidence);
  const stop = read.stops.at(-1);
  if (!isOut(stop)) return [];
  if (read.peaks.length > 0) return isSaidShifted(read, evidence) ? [readAlike(stop)] : [];
  return [
    need(
      'pointer-shifted',
      'the pointer shifted until the stop reads alike',
      upperFirst(`${shiftSaid(stop)} of the stop.`),
      false,
      MUST_TURN,
    ),
  ];
}

/** The gaps that no longer hold, each with nothing read of that valve since the cam is where it is. */
function scannedAgain(evidence: Evidence): Need[] {
  const gone = gapsGone(evidence).map(placeOf);
  return gone.length === 0
    ? []
    : [
        need(
          'gap-again',
          `piston to valve of ${listed(gone)} with the cam where it is now`,
          `Read piston to valve of ${listed(gone)} again, with the cam where it is now: it was moved after the gap was read.`,
          false,
          MUST_TURN,
        ),
      ];
}

/** Of a lobe that was read, once one was. */
function isCardKnown(evidence: Evidence): boolean {
  const { peaks } = readOf(evidence);
  if (peaks.length > 0) return peaks.some(({ mayBe }) => mayBe.length > 0);
  const { intake, exhaust } = evidence.card;
  return intake.centreline !== undefined || exhaust.centreline !== undefined;
}

export const ofTiming = (evidence: Evidence): Need[] => [
  need(
    'top-dead-centre',
    'both readings at the positive stop',
    'Read the wheel at the positive stop, one way and the other.',
    worked(evidence, 'top-dead-centre'),
    MUST_TURN,
  ),
  ...pointerShifted(evidence),
  need(
    'centreline',
    'the centreline, from equal drop or from events',
    'Read the wheel at equal drop either side of the peak.',
    worked(evidence, 'centreline'),
    MUST_TURN,
  ),
  need(
    'card-centreline',
    'the centreline on the cam card',
    'Read the centreline of that lobe off the cam card.',
    isCardKnown(evidence),
    MUST,
  ),
  ...scannedAgain(evidence),
];
