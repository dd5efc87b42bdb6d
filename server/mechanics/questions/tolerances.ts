import table from '../../../seeds/question-tolerances.json' with { type: 'json' };

type ToleranceName = keyof typeof table.tolerances;

/** How near the figures must come, in inches, degrees or bare shares as the table says. */
export type Tolerances = Readonly<Record<ToleranceName, number>>;

const all = table.tolerances;

/** The defaults of the table; every one may be changed. */
export const defaultTolerances: Tolerances = {
  turnFitsStrongly: all.turnFitsStrongly.value,
  turnFits: all.turnFits.value,
  turnsMost: all.turnsMost.value,
  turnShareStrongly: all.turnShareStrongly.value,
  turnShare: all.turnShare.value,
  mirrorFitsStrongly: all.mirrorFitsStrongly.value,
  mirrorFits: all.mirrorFits.value,
  usualTurn: all.usualTurn.value,
  zeroReturn: all.zeroReturn.value,
  zeroReturnDoubtful: all.zeroReturnDoubtful.value,
  passSpread: all.passSpread.value,
  ordinaryOver: all.ordinaryOver.value,
  ordinaryUnder: all.ordinaryUnder.value,
  ordinaryRoom: all.ordinaryRoom.value,
  flexMost: all.flexMost.value,
  slipFits: all.slipFits.value,
  valveLeast: all.valveLeast.value,
  valveMost: all.valveMost.value,
  lobeLeast: all.lobeLeast.value,
  lobeMost: all.lobeMost.value,
  lobeRare: all.lobeRare.value,
  levelRatioOff: all.levelRatioOff.value,
  lobeFits: all.lobeFits.value,
  cardRatioApart: all.cardRatioApart.value,
  liftFits: all.liftFits.value,
  lashFitsStrongly: all.lashFitsStrongly.value,
  lashFits: all.lashFits.value,
  formulaFitsStrongly: all.formulaFitsStrongly.value,
  formulaFits: all.formulaFits.value,
  sinkPerPass: all.sinkPerPass.value,
  sinkPerPassDoubtful: all.sinkPerPassDoubtful.value,
  sinkShort: all.sinkShort.value,
  springsSwapped: all.springsSwapped.value,
  springsSwappedDoubtful: all.springsSwappedDoubtful.value,
  travelLeft: all.travelLeft.value,
  travelReached: all.travelReached.value,
  lobePushMost: all.lobePushMost.value,
  samePeak: all.samePeak.value,
  copiedPeak: all.copiedPeak.value,
  peaksForSame: all.peaksForSame.value,
  peaksForCopy: all.peaksForCopy.value,
  peaksShare: all.peaksShare.value,
  statedOff: all.statedOff.value,
  statedOffDoubtful: all.statedOffDoubtful.value,
  swapOther: all.swapOther.value,
  swapOwn: all.swapOwn.value,
  tiltFrom: all.tiltFrom.value,
  tiltFromNotSaid: all.tiltFromNotSaid.value,
  tiltMost: all.tiltMost.value,
  nominalNear: all.nominalNear.value,
  caliperFrom: all.caliperFrom.value,
  caliperTo: all.caliperTo.value,
};

/** Minutes that the test of a question takes, by its code. */
export const MINUTES: ReadonlyMap<string, number> = new Map(Object.entries(table.minutes.of));

/** Ratios that rockers are sold as. */
export const COMMON_NOMINALS: readonly number[] = table.nominalRatios.of;
