import {
  ALIGNMENTS,
  GOALS,
  LASH_STATES,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
  VALVES,
} from '../../shared/schemas/words.ts';
import type { DialData } from '../../views/parts/dial.examples.ts';
import type { CallContext } from '../call/context.ts';
import { STEPS } from '../call/steps.ts';
import { dial } from '../drawings/dial.ts';
import { rulerOf } from '../drawings/drawing.ts';
import { SET_UP_LABELS } from '../steps/ratio/set-up-fields.ts';
import type { Page } from '../web/pages/render.ts';
import { lacksOf } from './report/missing.ts';
import { sentence } from './tape-text.ts';

const boxes = ({ 'not-said': _, ...words }: Readonly<Record<string, string>>) => Object.values(words);

const CHOICES = [
  { label: SET_UP_LABELS.valve, boxes: boxes(VALVES) },
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
  'Arm, as marked with a pen',
  SET_UP_LABELS['method.graduation'],
  SET_UP_LABELS['method.perTurn'],
  SET_UP_LABELS['method.travel'],
  SET_UP_LABELS['method.pushedIn'],
  'Ratio stamp, word for word',
  'Other number, word for word',
  'Box label, word for word',
];

const PASSES = ['Lobe 1', 'Lobe 2', 'Lobe 3', 'Valve 1', 'Valve 2', 'Valve 3', '', ''];

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

/** Rows for the valves, where the call is about telling one from its siblings and none was read yet. */
function valveNames({ call, build, events }: CallContext): string[] {
  const cylinders = build.spec.engine?.cylinders ?? 0;
  const read = events.some(({ kind }) => kind === 'sheet-readings-kept');
  if (call.goal !== 'noise-or-failure' || read) return [];
  return Array.from({ length: cylinders }, (_, index) => [
    `${index + 1} intake`,
    `${index + 1} exhaust`,
  ]).flat();
}

/** A blank sheet for the bench: a line for all that is missing, the method as boxes, rows for the passes, the dial. */
export function worksheetPage(context: CallContext): Page {
  const { call, build, base } = context;
  return {
    template: 'worksheet',
    title: `Worksheet of call ${call.number}`,
    place: '/calls',
    data: {
      back: base,
      title: `Worksheet: ${sentence(GOALS, call.goal).toLowerCase()}`,
      about: `Call ${call.number}, ${build.label}`,
      lacks: lacksOf(context).map(({ step, text }) => ({ text, of: STEPS[step].link })),
      valves: valveNames(context),
      choices: CHOICES,
      blanks: BLANKS,
      passes: PASSES,
      dials: [
        picture('dial-lifter', 'At the lifter: the plunger goes in', 'clockwise', '4 turns 82 = .482 in'),
        picture(
          'dial-valve',
          'At the valve: the hand runs backwards',
          'anticlockwise',
          '4 turns 82 = .482 in; the figure under the hand is 18',
        ),
      ],
    },
  };
}
