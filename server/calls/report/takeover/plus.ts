import { GAP_KINDS, SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import { stillStanding } from '../../../record/corrections/entries.ts';
import type { SheetReading } from '../../../sheet/sheet-table.ts';
import { valveName } from '../../pages/sight.ts';
import { nextOfPart } from '../sections/identified.ts';
import { sayLash } from '../sections/marks.ts';
import { leadingText } from '../sections/workings.ts';
import type { Whole } from '../whole.ts';
import { type Card, card, type Item } from './cards.ts';

const NOT_YET = 'not on record yet';

const standingOf = ({ sheet }: Whole): SheetReading[] => stillStanding(sheet?.readings ?? []);

/** The measurement that would separate the last two, and what is known of the cover. */
function ofPart(whole: Whole): Item[] {
  const { cover, coverBolting } = whole.part ?? {};
  const bolted = { 'through-centre': 'bolted through its centre', perimeter: 'bolted round the edge' };
  return [
    { label: 'Would separate the first two:', text: nextOfPart(whole) ?? NOT_YET },
    {
      label: 'Cover:',
      text: coverBolting === undefined ? NOT_YET : bolted[coverBolting],
      ...(cover === undefined ? {} : { note: `sideways ${cover.verdict}; height by clay` }),
    },
  ];
}

/** Which gaps are measured and which are reckoned. */
function ofGaps({ consequences }: Whole): Item[] {
  if (consequences.length === 0) return [{ label: 'Gaps measured or reckoned:', text: NOT_YET }];
  return consequences.map((found) => {
    const by = (basis: string) =>
      found.gaps.filter(({ after }) => after?.basis === basis).map(({ title }) => title.toLowerCase());
    const unknown = found.gaps
      .filter(({ after }) => after === undefined)
      .map(({ title }) => title.toLowerCase());
    const parts = [
      ['measured', by('measured')],
      ['reckoned', by('reckoned')],
      ['not known', unknown],
    ] as const;
    const told = parts.flatMap(([word, names]) =>
      names.length === 0 ? [] : [`${word}: ${names.join(', ')}`],
    );
    return { label: `Gaps on ${valveName(found.found.setUp)},`, text: told.join('; ') };
  });
}

/** The last setting of an adjuster, and by whom. */
function ofAdjuster(whole: Whole): Item[] {
  const set = whole.lash.lines.findLast(({ moment }) => moment === 'set') ?? whole.lash.lines.at(-1);
  const worked = whole.workings.findLast(({ computation }) => computation === 'adjuster');
  return [
    set === undefined
      ? { label: 'Last setting:', text: NOT_YET }
      : { label: 'Last setting:', text: sayLash(set), note: `${set.on}, ${set.doneBy || set.reading.by}` },
    ...(worked === undefined ? [] : [{ label: 'Worked out:', text: leadingText(whole, worked) }]),
    ...whole.lash.questions.map(({ ask }) => ({ label: 'Asked:', text: ask })),
  ];
}

/** Each length with its mark, and a photograph of every mark. */
function ofMarks({ photographs, marks }: Whole): Item[] {
  const pictures = photographs.filter(({ shows }) => shows === 'tip-mark');
  return [
    ...marks.valves.flatMap((valve) =>
      valve.questions.map(({ ask }) => ({ label: `Mark ${valveName(valve)}:`, text: ask })),
    ),
    {
      label: 'Photographs of tip marks:',
      text: pictures.map(({ caption, seq }) => caption || `line ${seq}`).join('; ') || NOT_YET,
    },
  ];
}

function ofTiming(whole: Whole): Item[] {
  const names = ['top-dead-centre', 'centreline', 'cam-timing'];
  const last = whole.workings.findLast(({ computation }) => names.includes(computation));
  return [{ label: 'Worked out last:', text: last === undefined ? NOT_YET : leadingText(whole, last) }];
}

/** The date that was promised; where the part lies is told in a note. */
function ofReturn({ sight }: Whole): Item[] {
  const dates = sight.notes.filter(({ kind, doneAt }) => kind === 'promise' && doneAt === undefined);
  return [
    {
      label: 'Date promised:',
      text: dates.map(({ due, body }) => `${due ?? 'no date'}, ${body}`).join('; ') || NOT_YET,
    },
    { label: 'Where the part lies:', text: 'as the notes say' },
  ];
}

function ofSwaps({ sight, sheet }: Whole): Item[] {
  const decided = (sheet?.springs ?? []).flatMap(({ swaps }) => swaps.map(({ words }) => words));
  const moved = Math.max(0, sight.placements.length - sight.arms.length);
  return [
    { label: 'Swaps made:', text: moved === 0 ? 'none on record' : `${moved}, in order above` },
    ...decided.map((text) => ({ label: 'Swap test:', text })),
  ];
}

/** Gaps that were read on a sinking lifter read too big. */
function toRetake(whole: Whole): Item[] {
  const soft = standingOf(whole).filter(
    ({ kind, lifter }) => lifter === 'hydraulic' && GAP_KINDS.some((gap) => gap === kind),
  );
  if (soft.length === 0) return [];
  const named = soft.map(
    ({ kind, cylinder, valve }) => `${SHEET_KINDS[kind].toLowerCase()} ${cylinder} ${valve}`,
  );
  return [{ label: 'To be retaken, read on a hydraulic lifter:', text: named.join('; ') }];
}

const BY_GOAL: Readonly<Record<string, readonly ((whole: Whole) => Item[])[]>> = {
  identify: [ofPart],
  'verify-ratio': [ofSwaps],
  'choose-ratio': [ofGaps],
  'clearances-after-a-change': [ofGaps],
  geometry: [ofMarks],
  'cam-timing': [ofTiming],
  adjuster: [ofAdjuster],
  'noise-or-failure': [ofAdjuster, ofSwaps],
  'returned-part': [ofReturn],
};

/** What the kind of call needs beside the rest, and what any call must not lose. */
export function plusCard(whole: Whole): Card {
  const own = (BY_GOAL[whole.sight.call.goal] ?? []).flatMap((items) => items(whole));
  return card('For this kind of call', [...own, ...toRetake(whole)], 'Nothing more.');
}
