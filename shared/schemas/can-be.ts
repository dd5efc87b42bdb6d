import { between, type FieldRange, orNone } from '../quantities/field-range.ts';

/*
 * What each kind of field can be: wide enough for every engine that a rocker arm is made for, from a single's to a
 * truck's, and narrow enough that millimetres, inches and thousandths rarely fit together. Common practice, no source.
 */
const in_ = (least: number, most: number): FieldRange => between(least, most, 'in');

export const CAN_BE = {
  lobeLift: in_(0.14, 1),
  valveLift: in_(0.14, 1.6),
  /** A pass may be read part of the way up, and of a worn lobe. */
  reading: in_(0.02, 1.6),
  partWay: in_(0.002, 1),
  zeroReturn: in_(-0.5, 0.5),
  /** Lash that somebody sets or a card asks for. */
  lash: orNone(in_(0.0015, 0.1)),
  /** Lash as it is found: a nut may have backed off. */
  lashFound: orNone(in_(0.0015, 0.25)),
  atLift: in_(0.003, 0.6),
  centreline: between(40, 200, 'deg'),
  duration: between(10, 500, 'deg'),
  bore: in_(1, 12),
  stroke: in_(0.8, 14),
  rod: in_(2, 25),
  pinOffset: in_(-0.3, 0.3),
  valveAngle: between(0, 80, 'deg'),
  /** From a top dead centre; what is past half a turn is told by the field itself. */
  crankAngle: between(-1000, 1000, 'deg'),
  /** How far a plunger leans. */
  lean: between(0, 90, 'deg'),
  /** A gap that is felt, gauged or read; metal that touches has none. */
  gap: orNone(in_(0.001, 2)),
  springHeight: in_(0.4, 4),
  seatLoad: between(5, 2000, 'lbf'),
  rate: between(10, 5000, 'lbf/in'),
  pivotToTip: in_(0.3, 4),
  graduation: in_(0.000_03, 0.006),
  perTurn: in_(0.003, 0.5),
  travel: in_(0.03, 6),
  pushedIn: orNone(in_(0.002, 4)),
  errorLimit: orNone(in_(0.000_01, 0.1)),
  /** No size of a rocker is below or above these. */
  partSize: in_(0.15, 4),
  markWidth: in_(0.005, 0.6),
  markOff: orNone(in_(0.001, 0.5)),
  pushrod: in_(1.5, 25),
  /** What stands between a cam and its bucket or follower. */
  lashShim: in_(0.03, 0.25),
  /** Under a rocker stand. */
  shims: orNone(in_(0.001, 0.6)),
  stem: in_(0.12, 1),
  limit: orNone(in_(0.0005, 1)),
  /** Any reading of the per-valve sheet, before it is known of what. */
  sheetReading: orNone(in_(-1, 2)),
} as const satisfies Readonly<Record<string, FieldRange>>;
