/**
 * Every probability, spread and limit of the inference, in one place, each an editable default.
 * Marks: `common practice` = common practice of the trade, no published source; all others are
 * judgement (design note). Lengths in inches; spreads are standard deviations unless named
 * `halfWidth` (rectangular).
 */
export const DEFAULT_ASSUMPTIONS = {
  /** Repeat of one reading, standard deviation. Common practice. */
  readingSpread: 0.0012,
  /** Reading the hand between two lines, half-width. Common practice. */
  readingHalfWidth: 0.0005,
  /** The dial's own error, half-width. Common practice. */
  dialHalfWidth: 0.0015,
  /** Setting lash again for one reading. */
  lashResetSpread: 0.001,
  /** Setting the plunger parallel for one reading, share of the lift. */
  alignedSpread: 0.001,
  /** Lobe to lobe, or card to lobe, half-width. */
  cardHalfWidth: 0.0025,

  /** Arms of one nominal ratio differ by this share, standard deviation. Common practice. */
  ratioSpread: 0.014,
  /** A lobe of which no card speaks. */
  lobeMean: 0.34,
  lobeSpread: 0.06,
  ordinaryLashSpread: 0.001,
  ordinaryTiltSpread: 0.001,
  /** Lift lost to flex at full lift under the running spring. Common practice. */
  flexMean: 0.017,
  flexSpread: 0.01,
  /** Part of that flex which a light spring causes. */
  flexLightShare: 0.03,
  /** Flex at a station: this share of the full-lift flex, the remainder rising with lobe lift. */
  flexAtSeatShare: 0.35,
  /** A hydraulic lifter under the running spring: loss on the first pass, and for each pass after it. */
  sinkMean: 0.014,
  sinkSpread: 0.0135,
  sinkPerPassMean: 0.0035,
  sinkPerPassSpread: 0.0035,
  /** Part of that loss under a light spring. */
  sinkLightShare: 0.3,
  /** Change of ratio through the lift, per inch of lobe lift, standard deviation. */
  ratioChangePerInch: 0.05,
  /** A caliper across a lobe reads this share of the lift. Common practice. */
  caliperShare: 0.96,
  caliperSpreadShare: 0.0115,
  /** Chance that the arm is what its mark says. */
  markTrue: 0.9,

  turnTooMany: 0.02,
  turnTooFew: 0.03,
  handReadBackwards: 0.02,
  lashUnsaid: 0.12,
  lashZeroOrHydraulic: 0.04,
  lashSet: 0.5,
  /** Lash left in when its setting is not said. Common practice. */
  lashMean: 0.016,
  lashSpread: 0.0065,
  lashSettingSpread: 0.003,
  tiltUnsaid: 0.07,
  tiltParallel: 0.03,
  tiltLeaning: 0.6,
  tiltSpread: 0.016,
  zeroMoved: 0.04,
  zeroMovedSpread: 0.014,
  wrongCardRow: 0.02,
  wrongValve: 0.02,
  /** Lobes nearer to each other than this cannot be mistaken to any effect. */
  lobesDiffer: 0.003,
  valveLiftAsLobe: 0.02,
  valveLiftAsLobeSpreadShare: 0.03,
  cardNotThisLobe: 0.03,
  cardNotThisLobeSpread: 0.018,
  /** A wrong digit, each entry. */
  slip: 0.02,
  /** The ways in which one entry can slip, all alike. */
  slipWays: 20,
  /** Each unit or decimal factor, of the valve lifts and of the card. */
  unitOrDecimal: 0.0025,
  /** Valve lift over lobe lift outside these bounds asks for the unit. */
  unitRatioLow: 0.8,
  unitRatioHigh: 2.6,
  unlistedFault: 0.03,
  unlistedFaultMean: -0.02,
  unlistedFaultSpread: 0.06,
  passesScatter: 0.01,
  passesScatterSpread: 0.012,
  ratioNotListed: 0.02,
  notListedMean: 1.62,
  notListedSpread: 0.5,

  /** Chance that asking finds something: where the mistake is that one, and where it is not. */
  zeroReturnFound: 0.9,
  zeroReturnFoundElse: 0.05,
  readBackFound: 0.9,
  readBackFoundElse: 0.01,

  /** Minutes that each next reading takes. */
  minutesReadBack: 1,
  minutesOneMorePass: 3,
  minutesLashToZero: 4,
  minutesAlignPlunger: 4,
  minutesAtStation: 6,
  minutesLobeAtLifter: 8,
  minutesLightSpring: 20,
  minutesLightSpringHydraulic: 25,
  minutesOtherValve: 15,
  /** Lobe lift at which the station reading is taken. */
  station: 0.2,
  /** A next reading must tell at least this much. */
  leastBits: 0.1,
  /** Ratios within one such logarithmic step count as one answer. */
  ratioStep: 0.015,
  /** Knowing the ratio nearer than this share is worth nothing. */
  ratioFloorShare: 0.0075,
  /** Offer the other valve from this chance of "something else". */
  somethingElseAsks: 0.3,

  /** A mistake is asked about from this chance on. */
  askFrom: 0.05,
  /** A hydraulic lifter sinks if its passes fall by more than this each. Common practice. */
  sinkingPerPass: 0.003,
  /** An explanation is listed from this chance on. */
  listFrom: 0.01,

  /**
   * A name is told beside the ratio from this chance on: likelier than all others together. Below it the ratio is told
   * alone, and the names stay in their table.
   */
  nameTold: 0.5,
  nameSettled: 0.9,
  /** Half the interval, as a share of the ratio, for a settled name. */
  intervalSettled: 0.02,
  noMistakeSettled: 0.5,
  /** The ratio agrees with the mark within this share. */
  markBand: 0.02,
  markAgrees: 0.95,
  markDiffers: 0.05,
} as const satisfies Readonly<Record<string, number>>;

export type AssumptionName = keyof typeof DEFAULT_ASSUMPTIONS;
export type Assumptions = Readonly<Record<AssumptionName, number>>;
export type AssumptionChanges = Partial<Assumptions>;

/** The defaults with the changes put in; nothing else is touched. */
export function assume(changes: AssumptionChanges | undefined): Assumptions {
  return { ...DEFAULT_ASSUMPTIONS, ...changes };
}
