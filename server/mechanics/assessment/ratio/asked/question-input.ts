import { isSolidLifter } from '../../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { LobeSource } from '../../../kit/lift-tools.ts';
import { IN } from '../../../kit/si.ts';
import type { Pass, QuestionInput } from '../../../questions/types.ts';
import { forSide, plansOf } from '../../common/plans.ts';
import { placeOf } from '../../common/said.ts';
import type { AnswerEvidence, Evidence, PassEvidence, PassKind, Spring } from '../../evidence.ts';
import { claimsOn } from '../claims/marks.ts';
import { madeIn } from '../claims/nominals.ts';
import type { SetUpRead } from '../read/set-up-read.ts';
import { lashesOnLog } from './lash-offered.ts';

const positive = (si: number | undefined): number | undefined =>
  si === undefined || si <= 0 ? undefined : si / IN;
const notNegative = (si: number | undefined): number | undefined =>
  si === undefined || si < 0 ? undefined : si / IN;

const toPass = ({ id, pass, value, zeroReturn }: PassEvidence): Pass => ({
  id,
  number: pass,
  lift: value / IN,
  ...(zeroReturn === undefined ? {} : { zeroReturn: zeroReturn / IN }),
});

const passesOf = (passes: readonly PassEvidence[]): Pass[] =>
  passes.filter(({ value }) => value > 0).map(toPass);

const mean = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;

/** The ratio of the same valve and arm on a spring, from the newest set-up that has one. */
function ratioOn(spring: Spring, own: SetUpRead, all: readonly SetUpRead[]) {
  const other = all.findLast(
    ({ setUp, lift, lobe }) =>
      setUp.spring === spring &&
      placeOf(setUp) === placeOf(own.setUp) &&
      setUp.armId === own.setUp.armId &&
      lift !== undefined &&
      lobe.value !== undefined,
  );
  if (other?.lift === undefined || other.lobe.value === undefined) return undefined;
  return { ratio: other.lift.read / other.lobe.value, lash: other.setUp.lash };
}

/** One peak for each other valve: several passes of one valve are alike because they are of one valve. */
function peaksElsewhere(own: SetUpRead, all: readonly SetUpRead[]): number[] | undefined {
  const elsewhere = all.filter(({ setUp }) => placeOf(setUp) !== placeOf(own.setUp));
  const places = [...new Set(elsewhere.map(({ setUp }) => placeOf(setUp)))];
  const peaks = places.flatMap((place) => {
    const lifts = elsewhere.filter(({ setUp }) => placeOf(setUp) === place).map(({ valve }) => valve.used);
    return mean(lifts.flat().map(({ value }) => value / IN)) ?? [];
  });
  return peaks.length === 0 ? undefined : peaks;
}

/** At the lifter, whatever the tool: only a caliper on the loose cam reads low of itself. */
const asDoubted = (source: LobeSource): 'card' | 'indicator' | 'caliper' =>
  source === 'card' || source === 'caliper' ? source : 'indicator';

/** How far the plunger leaned, as was answered last. */
const leanTold = (answers: readonly AnswerEvidence[]): number | undefined =>
  answers.flatMap(({ lean }) => lean ?? []).at(-1);

/** Of a planned change the card is for what was sold before, whatever arm is read: it is for no other rocker. */
function soldNow(evidence: Evidence, { soldAsThen, valve }: SetUpRead['setUp']): number[] {
  const { soldAs } = evidence.rockers;
  const isChange = soldAsThen !== undefined || plansOf(forSide(evidence, sideOfValve(valve))).length > 0;
  return soldAs === undefined || !isChange ? [] : [soldAs];
}

/** What the questions are asked from: inches, and what is known now of card, mark and springs. */
export function questionInput(evidence: Evidence, own: SetUpRead, all: readonly SetUpRead[]): QuestionInput {
  const { setUp, standing, lobe } = own;
  const card = evidence.card[sideOfValve(setUp.valve)];
  const otherCard = evidence.card[sideOfValve(setUp.valve) === 'intake' ? 'exhaust' : 'intake'];
  const of = (kind: PassKind) => passesOf(standing.filter((pass) => pass.kind === kind));
  const [light, running] = [ratioOn('light', own, all), ratioOn('running', own, all)];
  const [claim, ...others] = claimsOn(evidence, setUp.armId, setUp.soldAsThen);
  const lobePasses = lobe.from === undefined ? of('lobe-lift') : passesOf(lobe.passes.used);
  return {
    valvePasses: of('valve-lift'),
    lobePasses,
    spring: setUp.spring,
    lifter: setUp.lifter,
    lash: setUp.lash,
    restsOn: setUp.restsOn,
    alignment: setUp.alignment,
    lean: leanTold(setUp.answers),
    perTurn: setUp.perTurn / IN,
    inMillimetres: standing.length > 0 && standing.every(({ readAs }) => readAs.includes('mm')),
    stations: standing.flatMap(({ kind, atLobeLift, value }) =>
      kind === 'valve-lift-at' && atLobeLift !== undefined
        ? [{ atLobeLift: atLobeLift / IN, lift: value / IN }]
        : [],
    ),
    engineLifter: isSolidLifter(evidence.engine.lifter) ? 'solid' : undefined,
    graduation: setUp.graduation / IN,
    lobeSource: asDoubted(lobe.source),
    statedValveLift: of('stated-valve-lift').at(-1)?.lift,
    statedLobeLift: of('stated-lobe-lift').at(-1)?.lift,
    lashSetting: notNegative(setUp.lashSetting),
    travel: positive(setUp.travel),
    pushedIn: notNegative(setUp.pushedIn),
    cardLobeLift: positive(card.lobeLift),
    otherCardLobeLift: positive(otherCard.lobeLift),
    cardValveLift: positive(card.valveLift),
    cardLash: notNegative(card.lash),
    otherLashes: lashesOnLog(evidence, own).map((value) => value / IN),
    cardRatio: evidence.card.assumedRatio,
    nominalRatio: claim?.ratio,
    nominalFrom: claim?.to,
    alsoHeldAs: [...others.map(({ ratio }) => ratio), ...soldNow(evidence, setUp)],
    madeIn: madeIn(evidence),
    lightRatio: light?.ratio,
    runningRatio: running?.ratio,
    lightLash: light?.lash,
    runningLash: running?.lash,
    otherPeaks: peaksElsewhere(own, all),
  };
}
