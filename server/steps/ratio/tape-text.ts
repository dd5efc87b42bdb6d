import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { LASH_STATES, LIFTERS, READING_KINDS, SPRINGS, valveSaid } from '../../../shared/schemas/words.ts';
import { loggedAnswer, loggedQuestion } from '../../call/answered-text.ts';
import { ifSaid, type TapeNames, tellEvents } from '../../call/tell-events.ts';
import { ANSWER_EVENTS } from '../../records/answers/events.ts';
import { READING_EVENTS } from '../../records/readings/events.ts';
import { SET_UP_EVENTS } from '../../records/set-ups/events.ts';
import { factSaid, factsSaid } from './facts-said.ts';

interface Read {
  readonly setUpId: string;
  readonly kind: keyof typeof READING_KINDS;
  readonly pass: number;
  readonly atLobeLift?: string | undefined;
}

const told = (readAs: string | undefined) => (readAs === undefined ? undefined : asEntered(readAs));

/** `Valve lift, 5 intake, pass 2`; a number that somebody uses has no pass. */
function reading({ setUpId, kind, pass, atLobeLift }: Read, { valveOf }: TapeNames): string {
  const at = ifSaid(' at ', told(atLobeLift), ' of lobe lift');
  return `${READING_KINDS[kind]}${at}, ${valveOf(setUpId)}${kind.startsWith('stated-') ? '' : `, pass ${pass}`}`;
}

const keptAs = (kind: Read['kind'] | undefined): string =>
  kind === undefined ? '' : `, which was kept as ${READING_KINDS[kind].toLowerCase()}`;

/** What set-ups, readings of a pass, and answers to the questions these raise say on the tape. */
export const RATIO_TOLD = {
  ...tellEvents(SET_UP_EVENTS, {
    'set-up-started': ({ number, cylinder, valve, spring, lifter, lash }) => {
      const method = [
        factSaid('spring', SPRINGS[spring]),
        factSaid('lifter', LIFTERS[lifter]),
        factSaid('lash', LASH_STATES[lash]),
      ];
      return {
        kind: 'note',
        text: `Set-up ${number} on ${cylinder} ${valveSaid(valve)}: ${method.join(', ')}`,
      };
    },
    'set-up-put-right': ({ number, cylinder, valve, said, reason }) => ({
      kind: 'note',
      text: `Set-up ${number} on ${cylinder} ${valveSaid(valve)} ${said.struck === true ? 'struck out' : `put right: ${factsSaid(said).join(', ')}`}; ${reason}`,
    }),
  }),
  ...tellEvents(READING_EVENTS, {
    'reading-kept': (data, names) => {
      const back = ifSaid('; hand back at ', told(data.zeroReturn));
      const counted = data.counted === true ? '; small hand read' : '';
      return {
        kind: 'reading',
        text: `${reading(data, names)}${back}${counted}`,
        value: asEntered(data.readAs),
      };
    },
    'reading-replaced': (data, names) => ({
      kind: 'reading',
      text: `${reading(data, names)}, in place of ${asEntered(data.replaces)}${keptAs(data.wasKind)}`,
      value: asEntered(data.readAs),
    }),
    'reading-struck': (data, names) => ({
      kind: 'note',
      text: `${reading(data, names)}: ${asEntered(data.replaces)} struck out, ${data.reason}`,
    }),
  }),
  ...tellEvents(ANSWER_EVENTS, {
    'question-answered': ({ question, answer, questionId, code, found, value, cylinder, valve }, names) => {
      const said =
        names.answerSaid?.(questionId ?? '', answer, found, value) ??
        `${loggedAnswer(answer, questionId, code)}${ifSaid(', ', told(value))}`;
      const where = cylinder === undefined ? '' : `, ${cylinder} ${valveSaid(valve ?? '')}`;
      return { kind: 'answer', text: `${said}${where}, to: ${loggedQuestion(question, questionId, code)}` };
    },
  }),
};
