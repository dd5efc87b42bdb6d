import {
  ALIGNMENTS,
  LASH_STATES,
  LIFT_TOOLS,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
  sentence,
  VALVES,
} from '../../../shared/schemas/words.ts';
import type { DataOf } from '../../events/define-events.ts';
import type { SET_UP_EVENTS } from '../../records/set-ups/events.ts';

type Said = DataOf<(typeof SET_UP_EVENTS)['set-up-put-right']>['said'];

const IN_WORDS: readonly (readonly [
  Exclude<keyof Said, 'struck'>,
  string,
  Readonly<Record<string, string>>,
])[] = [
  ['cylinder', 'cylinder', {}],
  ['valve', 'valve', VALVES],
  ['spring', 'spring', SPRINGS],
  ['lifter', 'lifter', LIFTERS],
  ['lash', 'lash', LASH_STATES],
  ['lashSetting', 'lash left in', {}],
  ['tool', 'read with', LIFT_TOOLS],
  ['restsOn', 'tip on', RESTS_ON],
  ['alignment', 'plunger', ALIGNMENTS],
  ['graduation', 'division of the dial', {}],
  ['perTurn', 'travel per turn', {}],
  ['travel', 'whole travel', {}],
  ['pushedIn', 'pushed in', {}],
  ['errorLimit', 'error limit of a reading', {}],
  ['lobeSource', 'lobe lift from', LOBE_SOURCES],
  ['lobeErrorLimit', 'error limit of the lobe lift', {}],
];

const NOT_KNOWN: Readonly<Record<Said['notKnown'][number], string>> = {
  armId: 'arm',
  lashSetting: 'lash left in',
  travel: 'whole travel',
  pushedIn: 'pushed in',
};

/** `lash taken up to zero`; words that have the name in them need no other: `running spring`. */
export function factSaid(name: string, words: string): string {
  const said = words.toLowerCase();
  return said.includes(name) ? said : `${name} ${said}`;
}

/** `light checking spring`, `lash left in .020 in`: what was put right of a set-up, fact by fact. */
export const factsSaid = (said: Said): string[] => [
  ...IN_WORDS.flatMap(([fact, name, words]) => {
    const value = said[fact];
    return value === undefined ? [] : [factSaid(name, sentence(words, String(value)))];
  }),
  ...(said.armId === undefined ? [] : ['another arm']),
  ...said.notKnown.map((fact) => `${NOT_KNOWN[fact]} not known`),
];
