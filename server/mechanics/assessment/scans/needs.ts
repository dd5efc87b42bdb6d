import { crankSaid } from '../../gap-scan/words.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { type Lack, toAnswer, toRead, toSay } from '../common/lack.ts';
import { LASH_SAID } from '../sheet/gap-lash.ts';
import { CAM_THEN } from './cam-then.ts';
import { isWide, type Scanned } from './scanned.ts';

/** A scan whose neighbours are so uneven that an error in one reading counts this many times is read again. */
const UNEVEN = 1.5;

/** Which way a scan goes on that reads its least at an end: a least at an end is none. */
function onward({ fit, stations }: Scanned): Lack[] {
  if (fit === undefined || fit.edge === 'none') return [];
  const [first, last] = [stations[0], stations.at(-1)];
  const earlier = `earlier crank angles than ${crankSaid(first?.crankAngle ?? fit.crankAngle)}`;
  const later = `later crank angles than ${crankSaid(last?.crankAngle ?? fit.crankAngle)}`;
  const where = fit.bothEnds ? `${earlier}, and ${later}` : fit.edge === 'first' ? earlier : later;
  return [
    toRead(
      'scan-onward',
      `readings at ${where}, in steps of 2°, until the gap has risen twice: the least was read at the end of the scan, and further on it may be less`,
    ),
  ];
}

function steps({ fit }: Scanned): Lack[] {
  if (fit === undefined || fit.edge !== 'none') return [];
  const where = `between ${crankSaid(fit.before.crankAngle)} and ${crankSaid(fit.after.crankAngle)}`;
  if (isWide(fit))
    return [toRead('scan-steps', `readings every 2° ${where}: the steps beside the least are wide`)];
  return fit.spread > UNEVEN
    ? [toRead('scan-steps', `readings in even steps of 2° ${where}: the steps beside the least are uneven`)]
    : [];
}

function figures({ fit }: Scanned): Lack[] {
  return fit === undefined
    ? [
        toRead(
          'scan-figures',
          'gaps as figures at three crank angles or more: between gauges, or of fewer, the least is not found',
        ),
      ]
    : [];
}

/** What of the lash has to be known before the gap may be judged. */
function lash({ scan }: Scanned): Lack[] {
  if (scan.lash === 'not-said') return [toSay('lash-unsaid', LASH_SAID)];
  return scan.lash === 'set' && scan.lashSetting === undefined
    ? [toSay('lash-of-scan', 'the setting of the lash that was in it')]
    : [];
}

function doubts(questions: readonly AssessedQuestion[]): Lack[] {
  return questions.filter(inDoubt).map((question) => {
    const { code, ask, answered } = question;
    if (code === CAM_THEN && answered?.found === true)
      return toRead(
        'with-cam-now',
        'a scan with the cam where it is now: it was moved after this one, and the gap no longer holds',
      );
    const words = ask.replace(/\.$/, '');
    return answered?.found === true
      ? toSay('scan-wrong', `that scan put right or struck out, since it was found so: ${words}`)
      : toAnswer(question, `an answer to this: ${words}`);
  });
}

/** What a scan still needs before its least gap may have a word: doubts first. */
export const needsOfScan = (each: Scanned, questions: readonly AssessedQuestion[]): Lack[] => [
  ...doubts(questions),
  ...figures(each),
  ...onward(each),
  ...steps(each),
  ...lash(each),
];
