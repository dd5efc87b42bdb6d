import { IN, LBF, LBF_PER_IN } from '../../server/mechanics/kit/si.ts';
import { cleanSetUp, passesOf } from '../mechanics/assessment/plain.ts';
import { read } from '../mechanics/assessment/plain-build.ts';
import { type ChangeCall, ENGINE, MEASURED, springs, verify } from './change/change-call.ts';
import { PISTON_CALLS } from './change/piston-calls.ts';

/*
 * Calls about what a ratio does. Every figure is worked out by hand in the comment above its call, from the relations
 * of the trade: net lift = lobe × ratio − lash; room to bind = installed − net lift − solid; piston to valve less lobe
 * there × Δratio; cup moves tip arm × (1/r₁ − 1/r₂). Widths are errors in quadrature: a height ±.005, a planned or
 * stated ratio ±2 %, an arm not measured −2 to +4.5 %, a dial ±.002, a gap taken shut ±.005, an arm ±.010 (each common practice, no published source).
 * Gaps are told outward to the thousandth. All builds are invented.
 */

export const CALLS: readonly ChangeCall[] = [
  {
    // .400 × 1.6 − .020 = .620; 1.820 − .620 − 1.159 = .041; down √((.400·.072)² + 2·.005²) = .0297, up √((.400·.032)² +
    // 2·.005²) = .0146: .011 to .056, all under.
    said: 'One five to one six, springs are fine, right?',
    evidence: { ...ENGINE, springs: springs(1.82, 1.159) },
    gaps: [
      {
        key: 'intake',
        gap: 'coil-bind',
        word: 'short',
        value: 0.041,
        low: 0.011,
        high: 0.056,
        sentence:
          'Room to coil bind, intake valves with the planned 1.6: .041 in (.011 to .056), calculated, against .060 in: short. Don’t fit the 1.6.',
      },
    ],
    figures: [
      ['intake', 'gross-lift', 0.64],
      ['intake', 'net-lift', 0.62],
    ],
    says: [
      'With the planned 1.6, worst first: room to coil bind on the intake valves: short, .041 in (.011 to .056), calculated, against .060 in. Don’t fit the 1.6.',
      'Don’t fit the planned 1.6: room to coil bind on the intake valves comes out short, .041 in (.011 to .056), calculated, against .060 in.',
      'Set every adjuster again once they are fitted: the lash it had belongs to the other arms. One turn of the nut moves the gap at the valve by 2.60 pitches of its thread instead of 2.50.',
    ],
    silent: [/Do not run it:/, /Stop/],
  },
  {
    // .400 × 1.7 − .020 = .660; 1.820 − .660 − 1.200 = −.040; down √((.400·.0765)² + 2·.005²) = .0314, up √((.400·.034)² +
    // 2·.005²) = .0153: −.072 to −.024.
    said: 'And with one sevens?',
    evidence: { ...ENGINE, rockers: { soldAs: 1.5, planned: 1.7 }, springs: springs(1.82, 1.2) },
    gaps: [
      {
        key: 'intake',
        gap: 'coil-bind',
        word: 'short',
        value: -0.04,
        low: -0.072,
        high: -0.024,
        sentence:
          'Room to coil bind, intake valves with the planned 1.7: short, the spring would go solid .040 in (.024 to .072) before full lift, calculated, where .060 in is wanted. Don’t fit the 1.7.',
      },
    ],
    says: [
      'Don’t fit the planned 1.7: room to coil bind on the intake valves comes out short, the spring would go solid .040 in (.024 to .072) before full lift, calculated, where .060 in is wanted.',
    ],
  },
  {
    // Seal .700: 1.6 leaves .080, −√(.0288² + .005²) = .0292, +√(.0128² + .005²) = .0137: .050 to .094. 1.7 leaves .040,
    // −√(.0306² + .005²) = .0310, +√(.0136² + .005²) = .0145.
    said: 'One six or one seven: which of them clears the seals?',
    evidence: {
      ...ENGINE,
      rockers: { soldAs: 1.5, planned: 1.6, alsoPlanned: [1.7] },
      springs: { retainerToSeal: 0.7 * IN },
    },
    gaps: [
      { key: 'intake', gap: 'retainer-to-seal', word: 'clear', value: 0.08, low: 0.05, high: 0.094 },
      {
        key: 'intake:planned-1.7',
        gap: 'retainer-to-seal',
        word: 'close',
        value: 0.04,
        low: 0.008,
        high: 0.055,
        sentence:
          'Retainer to seal, intake valves with the planned 1.7: .040 in (.008 to .055), calculated, against .050 in: close, it can’t be told from the limit. It needs the first arm read on a light spring, or the gap measured on the engine.',
      },
    ],
    figures: [
      ['intake', 'net-lift', 0.62],
      ['intake:planned-1.7', 'net-lift', 0.66],
    ],
    says: [
      'With the planned 1.6, worst first: retainer to seal on the intake valves: clear, .080 in (.050 to .094), calculated, against .050 in.',
      'With the planned 1.7, worst first: retainer to seal on the intake valves: close, .040 in (.008 to .055), calculated, against .050 in.',
    ],
  },
  {
    // 1 + 1.6 = 2.60 before and after.
    said: 'The box says one six, the card too. What changes?',
    evidence: {
      ...ENGINE,
      call: verify,
      card: { ...ENGINE.card, assumedRatio: 1.6 },
      rockers: { soldAs: 1.6 },
      springs: springs(1.9, 1.15),
    },
    gaps: [{ key: 'intake', gap: 'coil-bind', word: 'clear', value: 0.13 }],
    says: ['One turn of the nut moves the gap at the valve by 2.60 pitches of its thread.'],
    silent: [/instead of/, /Not known yet/, /not known:/, /Set every adjuster/],
  },
  {
    said: 'I pushed the coils together by hand: they bind four thousandths before full lift.',
    evidence: { ...MEASURED, sheet: [read(1, 'intake', 'coil-bind', -0.004)] },
    gaps: [{ key: '1-intake', gap: 'coil-bind', word: 'short', value: -0.004, low: -0.006, high: -0.002 }],
    says: [
      'Do not turn it: room to coil bind on 1 intake is short, touching by .004 in ± .002 against .060 in.',
    ],
    silent: [/Do not run it:/],
  },
  {
    // How much is in it is not known, so that 1.554 is no ratio to go by: nothing is calculated with it.
    said: 'Five forty-four on a three fifty lobe, lash was left as it is, I don’t know how much.',
    evidence: {
      ...MEASURED,
      setUps: [{ ...cleanSetUp, lash: 'set' }],
      passes: passesOf('valve-lift', [0.544, 0.544, 0.544]),
    },
    figures: [
      ['1-intake', 'net-lift', undefined],
      ['1-intake', 'gross-lift', undefined],
    ],
    says: [
      'The ratio read on 1 intake is not calculated with yet. First: a reading at zero lash, since lash was left in and how much is not said.',
    ],
  },
  {
    // The setting put back: (.544 + .016) ÷ .350 = 1.6; .560 gross, the lash off once: .544 net again.
    said: 'The same, and the lash was at sixteen.',
    evidence: {
      ...MEASURED,
      setUps: [{ ...cleanSetUp, lash: 'set', lashSetting: 0.016 * IN }],
      passes: passesOf('valve-lift', [0.544, 0.544, 0.544]),
    },
    gaps: [{ key: '1-intake', gap: 'coil-bind', value: 0.206 }],
    figures: [
      ['1-intake', 'net-lift', 0.544],
      ['1-intake', 'gross-lift', 0.56],
    ],
  },
  {
    // Nobody said whether the lash was in: nothing is calculated until that is said.
    said: 'Five forty-four again, and I can’t remember about the lash.',
    evidence: {
      ...MEASURED,
      setUps: [{ ...cleanSetUp, lash: 'not-said' }],
      passes: passesOf('valve-lift', [0.544, 0.544, 0.544]),
    },
    figures: [['1-intake', 'net-lift', undefined]],
    says: ['The ratio read on 1 intake is not calculated with yet. First: whether the lash was taken up.'],
  },
  {
    // 130 + 350 × .620 = 347 lbf; pushrod × 1.6 = 555.2, stud × 2.6 = 902.2. At the most 347 + √(34.7² + (350·.400·.072)²)
    // = 383, told 385. Today 130 + 350 × .580 = 333, at the most 333 + √(33.3² + (350·.400·.0675)²) = 368, told 370.
    said: 'Three-eighths studs, one thirty on the seat, three fifty rate.',
    evidence: {
      ...ENGINE,
      engine: { ...ENGINE.engine, studSize: '3/8' },
      springs: { installedHeight: 1.82 * IN, seatLoad: 130 * LBF, rate: 350 * LBF_PER_IN },
    },
    figures: [
      ['intake', 'open-load', 347],
      ['intake', 'pushrod-load', 555.2],
      ['intake', 'pivot-load', 902.2],
    ],
    says: [
      'With the planned 1.6 the spring may open at up to 385 lb: 3/8 studs are commonly kept below about 300 to 350 lb open. The stud maker’s figure goes first. With what is on now, the 1.5 they are sold as, at up to 370 lb.',
    ],
  },
  {
    // 1.48 × (1/1.5 − 1/1.6) = .0617; .055 − .0617 = −.007. At the ends of the ratios: 1.672 takes .0398 more and 1.47
    // .0201, 1.568 gives .0189 and 1.5675 .0425; with ±.005: under .0449, over .0468: −.052 to .041.
    said: 'Pushrod has fifty-five in the head slot now.',
    evidence: {
      ...ENGINE,
      rockers: { ...ENGINE.rockers, pivotToTip: 1.48 * IN },
      taken: { intake: { pushrodToHead: 0.055 * IN }, exhaust: {} },
    },
    gaps: [
      {
        key: 'intake',
        gap: 'pushrod-to-head',
        word: 'close',
        value: -0.007,
        low: -0.052,
        high: 0.041,
        sentence:
          'Pushrod to head, intake valves with the planned 1.6: the pushrod would be .007 in (.052 at the most, .041 of room at the best) into the head, calculated, where .020 in is wanted: close, it can’t be told from the limit. It needs the first arm read on a light spring, or the gap measured on the engine.',
      },
    ],
    figures: [['intake', 'cup-move', 0.0617]],
  },
  {
    said: 'No number on them, but they are that family in your book. One six five is what I want.',
    evidence: {
      ...ENGINE,
      rockers: { family: { name: 'Bracken 155-A (invented)', nominalRatio: 1.55 }, planned: 1.65 },
    },
    // .400 × 1.65 − .020 = .640.
    figures: [['intake', 'net-lift', 0.64]],
    says: [
      'Not known yet: 7 gaps. The worst: piston to valve on the intake valves: it needs closed valve to piston at TDC, stroke, rod length, valve angle, pocket or flat piston, lobe centreline and a duration of the cam card.',
    ],
  },
  ...PISTON_CALLS,
];
