import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { planOf } from '../../../../shared/schemas/goals.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { springNeeds } from '../../consequences/spring-needs.ts';
import { assumedByCard } from '../change/stated-ratios.ts';
import { listed } from '../common/said.ts';
import type { Evidence, Side } from '../evidence.ts';
import { setUpsNow } from '../ratio/read/set-ups.ts';
import { CARD_KNOWN, isCardAsked, isWithoutCard } from '../ratio/told/card-known.ts';
import { MUST, type Need, need } from './need.ts';

export const ofTriage = ({ call }: Evidence): Need[] => [
  need(
    'engine-state',
    'whether it runs, has run or is apart',
    'Ask whether it runs, has run, or is apart.',
    call.engineState !== 'not-asked',
    { ...MUST, askAtBench: 'Say whether it runs, has run, or is apart.' },
  ),
  need(
    'contact',
    'whether anything hit, bent, came loose or turns tight',
    'Ask whether anything hit, bent, came loose or turns tight, before anything is turned.',
    call.contact !== 'not-asked',
    {
      ...MUST,
      askAtBench: 'Before anything is turned: say whether anything hit, bent, came loose or turns tight.',
    },
  ),
];

/** What of a pair is not there: each by its name, or the pair by its own. */
function lacking(both: string, each: Readonly<Record<string, unknown>>): string {
  const names = Object.keys(each).filter((name) => each[name] === undefined);
  const [only] = names;
  return names.length === 1 && only !== undefined ? only : both;
}

const known = (values: readonly unknown[]): boolean => values.every((each) => each !== undefined);

const crankLacking = ({ stroke, rodLength }: Evidence['engine']): string =>
  lacking('stroke and rod length', { 'the stroke': stroke, 'the rod length': rodLength });

type Card = Evidence['card'];
const lashLacking = ({ intake, exhaust }: Card): string =>
  lacking('lash', { 'intake lash': intake.lash, 'exhaust lash': exhaust.lash });
const centrelinesLacking = ({ intake, exhaust }: Card): string =>
  lacking('centrelines', {
    'intake centreline': intake.centreline,
    'exhaust centreline': exhaust.centreline,
  });

/** Of a nest what one of the two lacks is asked for by its name. */
function ofSpring(springs: Evidence['springs'], figures: Parameters<typeof springNeeds>[1], of: string) {
  const needs = springs.nest === undefined ? [] : springNeeds(springs, figures);
  const said = needs.length === 0 ? of : `the ${listed(needs)}`;
  return {
    said,
    have: springs.nest === undefined ? known(figures.map((figure) => springs[figure])) : needs.length === 0,
  };
}

function ofLoads(springs: Evidence['springs']): Need {
  const { said, have } = ofSpring(springs, ['seatLoad', 'rate'], 'seat load and rate of the springs');
  return need('spring-load', said, `Ask for ${said}.`, have, {
    at: { field: springs.seatLoad === undefined ? 'springs.seatLoad' : 'springs.rate' },
    askAtBench: `Enter ${said}.`,
  });
}

function ofSolid(springs: Evidence['springs']): Need {
  const { said, have } = ofSpring(springs, ['solidHeight'], 'the coil-bind height of the springs');
  return need('solid-height', said, `Ask for ${said}.`, have, {
    at: { field: 'springs.solidHeight' },
    askAtBench: `Enter ${said}.`,
  });
}

export const ofBuild = ({ engine, springs }: Evidence): Need[] => [
  need('lifter', 'the lifter type', 'Ask which lifters are in it.', engine.lifter !== undefined, {
    at: { field: 'engine.lifter' },
    askAtBench: 'Say which lifters are in it.',
  }),
  need(
    'mounting',
    'how the rockers are mounted',
    'Ask how the rockers are mounted.',
    engine.mounting !== undefined,
    { at: { field: 'engine.rockerMounting' }, askAtBench: 'Say how the rockers are mounted.' },
  ),
  need(
    'crank',
    crankLacking(engine),
    `Ask for ${crankLacking(engine)}.`,
    known([engine.stroke, engine.rodLength]),
    {
      at: { field: engine.stroke === undefined ? 'engine.stroke' : 'engine.rodLength' },
      askAtBench: `Enter ${crankLacking(engine)}.`,
    },
  ),
  need(
    'installed-height',
    'the installed height of the springs',
    'Measure the installed height of the springs.',
    springs.installedHeight !== undefined,
    { at: { field: 'springs.installedHeight' } },
  ),
  ofLoads(springs),
  ofSolid(springs),
];

/** The sides of which a valve was set up or read; of neither, those where an arm sits; else both: nobody knows yet which it will be. */
function sidesRead(evidence: Evidence): readonly Side[] {
  const read = [...setUpsNow(evidence), ...evidence.sheet.filter(({ standing }) => standing)].map(
    ({ valve }) => sideOfValve(valve),
  );
  // With nothing read yet it is where the arms sit.
  const sits = evidence.seats.map(({ valve }) => sideOfValve(valve));
  const own = SIDES.filter((side) => (read.length === 0 ? sits : read).includes(side));
  return own.length === 0 ? SIDES : own;
}

/** A change is of both sides; a ratio that is read needs the lobe under the valve it is read on. */
const lobesWanted = (evidence: Evidence): readonly Side[] => {
  const { isChange, byRatio } = planOf(evidence.call.goal);
  // A bucket has no ratio that a lobe would be read for.
  if (evidence.engine.gear === 'bucket' && byRatio === true && isChange !== true) return [];
  return isChange === true ? SIDES : sidesRead(evidence);
};

export const ofCam = (evidence: Evidence): Need[] =>
  isWithoutCard(evidence) ? [] : ofCardAndLobes(evidence);

const ofCardAndLobes = (evidence: Evidence): Need[] => [
  ...SIDES.map((side) =>
    need(
      `lobe-lift-${side}`,
      `the ${side} lobe lift on the cam card`,
      isCardAsked(evidence)
        ? `Ask whether there is a card for this cam; if there is, read the ${side} lobe lift off it.`
        : `Read the ${side} lobe lift off the cam card.`,
      evidence.card[side].lobeLift !== undefined,
      {
        ...(lobesWanted(evidence).includes(side) ? MUST : {}),
        ...(isCardAsked(evidence)
          ? {
              settles: CARD_KNOWN,
              askAtBench: `Say whether there is a card for this cam; if there is, read the ${side} lobe lift off it.`,
            }
          : {}),
        at: { field: `cam.${side}.lobeLift` },
      },
    ),
  ),
  ...ofCard(evidence),
];

/** A hydraulic lifter has no lash, and the card of its cam none to read off. */
const lashOfCard = ({ card, engine }: Evidence): Need[] =>
  isHydraulicLifter(engine.lifter)
    ? []
    : [
        need(
          'card-lash',
          `the ${lashLacking(card)} on the card`,
          `Read the ${lashLacking(card)} off the cam card.`,
          known([card.intake.lash, card.exhaust.lash]),
          { at: { field: `cam.${card.intake.lash === undefined ? 'intake' : 'exhaust'}.lash` } },
        ),
      ];

const ofCard = (evidence: Evidence): Need[] => {
  const { card } = evidence;
  return [
    need(
      'assumed-ratio',
      'the ratio the card assumes',
      'Read off the card which rocker ratio it assumes.',
      // Its own lifts say it as well, and are calculated with.
      card.assumedRatio !== undefined || SIDES.some((side) => assumedByCard(evidence, side) !== undefined),
      { ...MUST, at: { field: 'cam.assumedRatio' } },
    ),
    ...lashOfCard(evidence),
    need(
      'centrelines',
      `the ${centrelinesLacking(card)} on the card`,
      `Read ${centrelinesLacking(card) === 'centrelines' ? 'both' : 'the'} ${centrelinesLacking(card)} off the cam card.`,
      known([card.intake.centreline, card.exhaust.centreline]),
      { at: { field: `cam.${card.intake.centreline === undefined ? 'intake' : 'exhaust'}.centreline` } },
    ),
  ];
};
