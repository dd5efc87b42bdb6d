import { z } from 'zod';
import type { FieldRange } from '../quantities/field-range.ts';
import { CAN_BE } from './can-be.ts';
import { entered } from './entered.ts';
import { enteredLengths } from './entered-list.ts';
import { choice, listOf } from './fields.ts';
import { bare, rockerRatio } from './number-fields.ts';
import { words } from './texts.ts';
import { keysOf, PUSHROD_TAKEN, VALVE_GEARS } from './words.ts';

const optionalLength = (description: string, range: FieldRange) =>
  entered('length', description, range).optional();

const lobe = z.strictObject({
  lobeLift: optionalLength('rise of the lifter on this lobe, from the card', CAN_BE.lobeLift),
  cardValveLift: optionalLength('valve lift the card prints', CAN_BE.valveLift),
  centreline: entered(
    'angle',
    'crank angle of peak lift, intake ATDC, exhaust BTDC',
    CAN_BE.centreline,
  ).optional(),
  lash: entered('length', 'lash the card asks for at the valve', CAN_BE.lash, {
    sign: 'not-negative',
  }).optional(),
  durations: listOf(
    z.strictObject({
      atLift: entered('length', 'lobe lift at which the duration is stated', CAN_BE.atLift),
      duration: entered('angle', 'crank degrees above that lift', CAN_BE.duration, { sign: 'positive' }),
    }),
    'durations at stated lifts',
    0,
    20,
  ).optional(),
});

/** Gaps of one valve that are taken once on the engine and calculated from. */
const perValve = z.strictObject({
  closedGapAtTdc: entered(
    'length',
    'drop of the closed valve to the piston at top dead centre, along the valve',
    CAN_BE.gap,
    {
      sign: 'not-negative',
    },
  ).optional(),
  pistonFloor: choice(['pocket', 'flat'], 'a pocket cut to the valve’s angle, or a flat crown').optional(),
  lobeLiftAtClosest: entered(
    'length',
    'rise of the lifter where valve and piston were found closest',
    CAN_BE.partWay,
    {
      sign: 'not-negative',
    },
  ).optional(),
  pushrodToHead: entered('length', 'pushrod to head slot, read with the arms that are on now', CAN_BE.gap, {
    sign: 'not-negative',
  }).optional(),
});

/** Everything known of an engine, its cam card, springs and rockers. Each entry may be missing at any time. */
export const buildSpec = z.strictObject({
  engine: z
    .strictObject({
      description: words('engine family, block and head, in the caller’s words').optional(),
      cylinders: bare('number of cylinders', { least: 1, most: 16, whole: true }).optional(),
      intakeValves: bare('intake valves in a cylinder; left out, one', {
        least: 1,
        most: 3,
        whole: true,
      }).optional(),
      exhaustValves: bare('exhaust valves in a cylinder; left out, one', {
        least: 1,
        most: 3,
        whole: true,
      }).optional(),
      firingOrder: words('firing order, as cast or stated').optional(),
      bankOrder: words(
        'cylinders as they stand along the banks, front to back, one bank after the other',
      ).optional(),
      bore: optionalLength('cylinder bore', CAN_BE.bore),
      stroke: optionalLength('crank stroke', CAN_BE.stroke),
      rodLength: optionalLength('connecting rod, centre to centre', CAN_BE.rod),
      pinOffset: entered(
        'length',
        'piston pin offset, positive toward the side the crankpin moves to after TDC',
        CAN_BE.pinOffset,
        {
          sign: 'any',
        },
      ).optional(),
      valveAngle: entered('angle', 'valve to bore axis', CAN_BE.valveAngle).optional(),
      valveGear: choice(
        keysOf(VALVE_GEARS),
        'what is between the cam and the valve; left out, pushrods and rockers',
      ).optional(),
      lifter: choice(
        ['solid-flat', 'solid-roller', 'hydraulic-flat', 'hydraulic-roller'],
        'lifter type',
      ).optional(),
      rockerMounting: choice(['stud', 'pedestal', 'shaft'], 'how the rockers are mounted').optional(),
      coverBolting: choice(['through-centre', 'perimeter'], 'how the valve covers are bolted').optional(),
      use: choice(['street', 'race'], 'what it is built for: which default limits count').optional(),
      rodMaterial: choice(['steel', 'aluminium'], 'what the connecting rods are made of').optional(),
      shimStock: enteredLengths(
        'lash shims that can be had, each measured, each there once',
        CAN_BE.lashShim,
      ).optional(),
      studSize: choice(['5/16', '3/8', '7/16'], 'thread of the rocker studs, in inches').optional(),
    })
    .optional(),
  cam: z
    .strictObject({
      card: words('name or number on the cam card, word for word').optional(),
      assumedRatio: rockerRatio('rocker ratio the card assumes').optional(),
      lashAt: choice(['cold', 'hot'], 'the heat that the lash on the card is for').optional(),
      intake: lobe.optional(),
      exhaust: lobe.optional(),
    })
    .optional(),
  springs: z
    .strictObject({
      description: words('spring, in the caller’s words').optional(),
      installedHeight: optionalLength('installed height, valve shut', CAN_BE.springHeight),
      seatLoad: entered('load', 'load at installed height', CAN_BE.seatLoad).optional(),
      rate: entered('rate', 'spring rate', CAN_BE.rate).optional(),
      solidHeight: optionalLength('coil-bind height', CAN_BE.springHeight),
      retainerToSeal: optionalLength('retainer underside to seal, valve shut', CAN_BE.gap),
      inner: z
        .strictObject({
          installedHeight: optionalLength(
            'installed height of the inner spring; left out, that of the outer',
            CAN_BE.springHeight,
          ),
          seatLoad: entered(
            'load',
            'load of the inner spring at its installed height',
            CAN_BE.seatLoad,
          ).optional(),
          rate: entered('rate', 'rate of the inner spring', CAN_BE.rate).optional(),
          solidHeight: optionalLength('coil-bind height of the inner spring', CAN_BE.springHeight),
        })
        .optional()
        .meta({
          description: 'the inner spring of a nest: with it, the figures above are the outer one’s alone',
        }),
    })
    .optional(),
  rockers: z
    .strictObject({
      nominalRatio: rockerRatio('ratio the rockers are sold as').optional(),
      plannedRatio: rockerRatio(
        'ratio of the rockers that are to be fitted, where a change is planned',
      ).optional(),
      plannedExhaustRatio: rockerRatio(
        'the same of the exhausts, where theirs is another; left out, as the planned ratio',
      ).optional(),
      alsoPlanned: listOf(
        rockerRatio('another ratio that is thought of'),
        'other ratios that are set beside the planned one',
        0,
        5,
      ).optional(),
      family: words('part family, as the box or maker calls it').optional(),
      pivotToTip: optionalLength('rocker pivot to the roller’s centre', CAN_BE.pivotToTip),
    })
    .optional(),
  pushrods: z
    .strictObject({
      intake: optionalLength('length of the intake pushrods', CAN_BE.pushrod),
      exhaust: optionalLength(
        'length of the exhaust pushrods, each side by itself; left out, not known',
        CAN_BE.pushrod,
      ),
      over: choice(['ends', 'gauge'], 'over what these lengths are taken, where that is known').optional(),
      taken: choice(keysOf(PUSHROD_TAKEN), 'how these lengths were taken, where that is known').optional(),
    })
    .optional()
    .meta({
      description: 'pushrods as they were measured or told; one by a checker is kept as a computation',
    }),
  clearances: z.strictObject({ intake: perValve.optional(), exhaust: perValve.optional() }).optional(),
});

export type BuildSpec = z.output<typeof buildSpec>;
export type Lobe = z.output<typeof lobe>;
