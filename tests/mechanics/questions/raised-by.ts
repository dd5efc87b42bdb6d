import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { fromCard, lobe, pass, plain, valve } from './plain.ts';

/*
 * What a question rests on: a doubt of two figures needs both of them (arithmetic, no source). Each input raises one
 * kind of doubt about the 1.6 on a .350 lobe; with what it rests on left out that doubt is not raised, and with
 * anything else left out every sentence that is left is still whole.
 */
export type Field = keyof QuestionInput;
type Row = readonly [code: string, input: QuestionInput, restsOn: readonly (readonly Field[])[]];

const RATIOS = ['nominalRatio', 'cardRatio'] as const;
const LOBES = ['lobePasses', 'cardLobeLift'] as const;
const rising = [0.05, 0.1, 0.15].map((atLobeLift) => ({ atLobeLift, lift: 1.6 * atLobeLift }));

export const ROWS: readonly Row[] = [
  ['stated-not-read', { ...plain, statedValveLift: 0.5 }, [['statedValveLift'], ['valvePasses']]],
  ['stated-not-read', { ...plain, statedLobeLift: 0.3 }, [['statedLobeLift'], LOBES]],
  ['stated-not-read', { ...fromCard, statedLobeLift: 0.3 }, [['statedLobeLift'], ['cardLobeLift']]],
  ['unit-mixed', { ...plain, valvePasses: valve(14.22) }, [['valvePasses']]],
  ['unit-mixed', { ...plain, lobePasses: lobe(8.89) }, [['lobePasses']]],
  ['unit-mixed', { ...plain, cardLobeLift: 8.89 }, [['cardLobeLift']]],
  ['unit-mixed', { ...plain, statedLobeLift: 8.89 }, [['statedLobeLift']]],
  ['unit-mixed', { ...plain, cardValveLift: 14.22 }, [['cardValveLift']]],
  ['decimal-slip', { ...plain, valvePasses: valve(5.6) }, [['valvePasses']]],
  ['decimal-slip', { ...plain, statedValveLift: 5.6 }, [['statedValveLift']]],
  ['decimal-slip', { ...plain, cardValveLift: 5.6 }, [['cardValveLift']]],
  [
    'lifts-exchanged',
    { ...plain, valvePasses: valve(0.35), lobePasses: lobe(0.56) },
    [['valvePasses'], ['lobePasses'], RATIOS],
  ],
  ['pass-of-other-lift', { ...plain, lobePasses: lobe(0.35, 0.35, 0.56) }, [['lobePasses'], ['valvePasses']]],
  ['pass-of-other-lift', { ...plain, valvePasses: valve(0.56, 0.56, 0.35) }, [['valvePasses'], LOBES]],
  ['gross-lift-as-lobe', { ...fromCard, cardLobeLift: 0.56 }, [['cardLobeLift']]],
  ['gross-lift-as-lobe', { ...plain, lobePasses: lobe(0.56) }, [['lobePasses']]],
  ['zero-not-returned', { ...plain, valvePasses: [pass(0.56, 'valve1', 0.01)] }, [['valvePasses']]],
  [
    'zero-not-returned',
    { ...plain, lobePasses: [pass(0.35, 'lobe1'), pass(0.36, 'lobe2'), pass(0.35, 'lobe3', 0)] },
    [['lobePasses']],
  ],
  ['turn-miscounted', { ...plain, valvePasses: valve(0.46, 0.46) }, [['valvePasses'], [...RATIOS], LOBES]],
  ['turn-miscounted', { ...plain, lobePasses: lobe(0.25) }, [['lobePasses'], ['cardLobeLift', ...RATIOS]]],
  [
    'hand-read-backwards',
    // 1.1 less .58 is .52, and 1.6 times .325.
    { ...fromCard, cardLobeLift: 0.325, valvePasses: valve(0.58) },
    [['valvePasses'], ['cardLobeLift'], RATIOS],
  ],
  ['valve-swapped', { ...plain, lobePasses: lobe(0.33) }, [['cardLobeLift'], ['otherCardLobeLift']]],
  [
    'valve-swapped',
    { ...fromCard, otherCardLobeLift: 0.3, valvePasses: valve(0.48) },
    [['valvePasses'], ['cardLobeLift'], ['otherCardLobeLift'], RATIOS],
  ],
  [
    'lash-left-in',
    { ...fromCard, lash: 'not-said', valvePasses: valve(0.544) },
    [['valvePasses'], ['cardLash'], ['cardLobeLift'], RATIOS],
  ],
  [
    'lash-formula',
    // (.350 − .016) · 1.6
    { ...plain, statedValveLift: 0.5344 },
    [['statedValveLift'], ['cardLash'], LOBES, RATIOS],
  ],
  ['lash-formula', { ...plain, cardValveLift: 0.5344 }, [['cardValveLift'], ['cardLash'], LOBES]],
  [
    'falling-passes',
    { ...plain, lifter: 'hydraulic', valvePasses: valve(0.56, 0.55, 0.54) },
    [['valvePasses']],
  ],
  [
    'falling-passes',
    { ...plain, lifter: 'hydraulic', spring: 'running', valvePasses: valve(0.55) },
    [['valvePasses']],
  ],
  ['drifting-passes', { ...plain, lobePasses: lobe(0.36, 0.35, 0.34) }, [['lobePasses']]],
  ['drifting-passes', { ...plain, valvePasses: valve(0.55, 0.56, 0.57) }, [['valvePasses']]],
  [
    'lifter-sunk',
    { ...fromCard, lifter: 'hydraulic', valvePasses: valve(0.54) },
    [['valvePasses'], ['cardLobeLift'], RATIOS],
  ],
  ['out-of-travel', { ...plain, pushedIn: undefined, travel: 0.5 }, [['valvePasses'], ['travel']]],
  ['out-of-travel', { ...plain, travel: 0.3, pushedIn: 0.9 }, [['lobePasses'], ['travel']]],
  [
    'out-of-travel',
    {
      ...fromCard,
      pushedIn: undefined,
      travel: undefined,
      valvePasses: valve(0.5),
      otherPeaks: Array(8).fill(0.5),
    },
    [['valvePasses'], ['otherPeaks']],
  ],
  ['plunger-tilted', { ...plain, alignment: 'leaning', lean: 0.2 }, [['valvePasses']]],
  [
    'caliper-on-lobe',
    { ...plain, lobeSource: 'caliper', lobePasses: lobe(0.33) },
    [['lobePasses'], ['cardLobeLift', 'nominalRatio'], ['cardLobeLift', 'valvePasses']],
  ],
  ['copied-reading', { ...plain, otherPeaks: Array(8).fill(0.56) }, [['valvePasses'], ['otherPeaks']]],
  ['card-ratio', { ...plain, cardRatio: 1.5 }, [['cardRatio'], ['nominalRatio']]],
  [
    'card-ratio',
    { ...plain, cardRatio: undefined, cardValveLift: 0.525 },
    [['cardValveLift'], ['cardLobeLift'], ['nominalRatio']],
  ],
  ['spring-mixed', { ...plain, spring: 'running' }, [['valvePasses'], ['nominalRatio'], LOBES]],
  ['spring-not-said', { ...plain, spring: 'not-said' }, [['valvePasses']]],
  ['springs-swapped', { ...plain, lightRatio: 1.5, runningRatio: 1.6 }, [['lightRatio'], ['runningRatio']]],
  [
    'springs-at-different-lash',
    { ...plain, spring: 'running', lightLash: 'zero', runningLash: 'set' },
    [['lightLash'], ['runningLash']],
  ],
  [
    'lifter-of-engine',
    { ...plain, engineLifter: 'solid', lifter: 'hydraulic' },
    [['engineLifter'], ['valvePasses']],
  ],
  ['lifter-not-said', { ...plain, lifter: 'not-said' }, [['valvePasses']]],
  ['lash-not-said', { ...plain, lash: 'not-said' }, [['valvePasses']]],
  ['alignment-not-said', { ...plain, alignment: 'not-said' }, [['valvePasses']]],
  ['rests-on-not-said', { ...plain, restsOn: 'not-said' }, [['valvePasses']]],
  [
    'short-at-top',
    { ...fromCard, valvePasses: valve(0.54), stations: rising },
    [['valvePasses'], ['stations'], ['cardLobeLift'], ['nominalRatio']],
  ],
];
