import { between, type FieldRange, orNone, usually } from '../quantities/field-range.ts';

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
  lash: usually(orNone(in_(0.0015, 0.1)), 0.002, 0.04, 'in'),
  /** Lash as it is found: a nut may have backed off, and a valve that is held open has next to none. */
  lashFound: usually(orNone(in_(0.01 / 25.4, 0.25)), 0.002, 0.04, 'in'),
  /** How far a lifter’s plunger is pressed down. */
  preload: usually(orNone(in_(0.001, 0.3)), 0.01, 0.15, 'in'),
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
  gap: usually(orNone(in_(0.001, 2)), 0.006, 0.35, 'in'),
  springHeight: in_(0.65, 4),
  seatLoad: between(5, 2000, 'lbf'),
  rate: between(10, 5000, 'lbf/in'),
  pivotToTip: in_(0.3, 4),
  graduation: in_(0.000_03, 0.006),
  perTurn: in_(0.003, 0.5),
  travel: in_(0.03, 6),
  pushedIn: orNone(in_(0.002, 4)),
  errorLimit: orNone(in_(0.000_01, 0.1)),
  /** No size of a rocker is below or above these. */
  partSize: usually(in_(0.15, 4), 0.28, 4, 'in'),
  /** Most holes are for a stud or bolt of 5/16 to 3/4 in; the least that a rocker can have is far smaller. */
  hole: usually(in_(0.15, 1), 0.28, 0.76, 'in'),
  trunnionWidth: in_(0.5, 3),
  roller: in_(0.2, 1.2),
  bodyWidth: in_(0.3, 2),
  partToTip: in_(0.5, 4),
  partToCup: in_(0.3, 3),
  stud: usually(in_(0.15, 0.8), 0.28, 0.76, 'in'),
  /** The pitch itself, or the length that threads were counted over. */
  pitch: in_(0.015, 4),
  stemOfPart: in_(0.15, 0.6),
  markWidth: in_(0.005, 0.6),
  markOff: orNone(in_(0.001, 0.5)),
  pushrod: in_(1.5, 25),
  /** Along the block, the head or a valve. */
  engineLength: in_(0.5, 30),
  /** Over a face of the head, or below it. */
  overFace: in_(-8, 8),
  rollerRadius: in_(0.1, 0.6),
  plungerTravel: usually(in_(0.01, 0.4), 0.04, 0.3, 'in'),
  /** What stands between a cam and its bucket or follower. */
  lashShim: in_(0.03, 0.25),
  /** Under a rocker stand. */
  shims: orNone(in_(0.001, 0.6)),
  stem: in_(0.12, 1),
  limit: orNone(in_(0.0005, 1)),
  /** Any reading of the per-valve sheet, before it is known of what. */
  sheetReading: orNone(in_(-1, 2)),
} as const satisfies Readonly<Record<string, FieldRange>>;
