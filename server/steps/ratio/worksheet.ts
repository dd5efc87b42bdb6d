import { inSpoken } from '../../../shared/quantities/authored.ts';
import {
  ALIGNMENTS,
  LASH_STATES,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
} from '../../../shared/schemas/words.ts';
import type { DialData } from '../../../views/parts/dial.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { valveWords } from '../../call/valve-words.ts';
import { NO_ROWS, type WorksheetRows } from '../../call/worksheet-rows.ts';
import { dial } from '../../drawings/dial.ts';
import { rulerOf } from '../../drawings/drawing.ts';
import { SET_UP_LABELS } from './set-up-fields.ts';

const boxes = ({ 'not-said': _, ...words }: Readonly<Record<string, string>>) => Object.values(words);

const CHOICES = [
  { label: SET_UP_LABELS['method.spring'], boxes: boxes(SPRINGS) },
  { label: SET_UP_LABELS['method.lifter'], boxes: boxes(LIFTERS) },
  { label: SET_UP_LABELS['method.lash'], boxes: boxes(LASH_STATES) },
  { label: SET_UP_LABELS['method.restsOn'], boxes: boxes(RESTS_ON) },
  { label: SET_UP_LABELS['method.alignment'], boxes: boxes(ALIGNMENTS) },
  { label: SET_UP_LABELS['method.lobeSource'], boxes: boxes(LOBE_SOURCES) },
];

const BLANKS = [
  'Date and who reads',
  SET_UP_LABELS.cylinder,
  SET_UP_LABELS['method.graduation'],
  SET_UP_LABELS['method.perTurn'],
  SET_UP_LABELS['method.travel'],
  SET_UP_LABELS['method.pushedIn'],
];

const PASSES = ['Lobe 1', 'Lobe 2', 'Lobe 3', 'Valve 1', 'Valve 2', 'Valve 3'];

const EXAMPLE = { perTurn: 0.1, graduation: 0.001, turns: 4, needle: 0.082 } as const;

function picture(
  id: string,
  heading: string,
  runs: 'clockwise' | 'anticlockwise',
  reading: string,
): DialData {
  // The sheet is for writing on: the reading below the dial says what its table would.
  const { table: _, ...drawing } = dial(
    { ...EXAMPLE, runs },
    { id: `${id}-drawing`, ruler: rulerOf('inch') },
  );
  return { id, heading, drawing, reading };
}

/** The method as boxes, rows for the passes, and the dial both ways round. */
export const ratioRows = (context: CallContext): WorksheetRows => ({
  ...NO_ROWS,
  choices: [{ label: SET_UP_LABELS.valve, boxes: boxes(valveWords(context)) }, ...CHOICES],
  blanks: BLANKS,
  passes: PASSES,
  dials: [
    picture(
      'dial-lifter',
      'At the lifter: the plunger goes in',
      'clockwise',
      inSpoken('4 turns 82 = .482 in'),
    ),
    picture(
      'dial-valve',
      'At the valve: the hand runs backwards',
      'anticlockwise',
      inSpoken('4 turns 82 = .482 in; the figure under the hand is 18'),
    ),
  ],
});
