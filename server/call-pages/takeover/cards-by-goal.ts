import { GAP_KINDS, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import type { Card, CardItem } from '../../../views/pages/pages.ts';
import { valveName } from '../../call/context.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import { nextSentence } from '../../steps/identify/answers.ts';
import type { ReportData } from '../report/report-data.ts';
import { nextOfReport } from '../report/sections/identified.ts';
import { sayLash } from '../report/sections/marks.ts';
import { leadingText } from '../report/sections/workings.ts';
import { card } from './cards.ts';

const NOT_YET = 'not on record yet';

const standingOf = ({ sheet }: ReportData): SheetReading[] => stillStanding(sheet?.readings ?? []);

/** The measurement that would separate the last two, and what is known of the cover. */
function ofPart(report: ReportData): CardItem[] {
  const { cover, coverBolting } = report.part ?? {};
  const next = nextOfReport(report);
  const bolted = { 'through-centre': 'bolted through its centre', perimeter: 'bolted round the edge' };
  return [
    { label: 'Would separate the first two:', text: next === undefined ? NOT_YET : nextSentence(next) },
    {
      label: 'Cover:',
      text: coverBolting === undefined ? NOT_YET : bolted[coverBolting],
      ...(cover === undefined ? {} : { note: `sideways ${cover.verdict}; height by clay` }),
    },
  ];
}

/** Which gaps are measured and which are calculated. */
function ofGaps({ consequences }: ReportData): CardItem[] {
  if (consequences.length === 0) return [{ label: 'Gaps measured or calculated:', text: NOT_YET }];
  return consequences.map((found) => {
    const by = (basis: string) =>
      found.gaps.filter(({ after }) => after?.basis === basis).map(({ title }) => title.toLowerCase());
    const unknown = found.gaps
      .filter(({ after }) => after === undefined)
      .map(({ title }) => title.toLowerCase());
    const parts = [
      ['measured', by('measured')],
      ['calculated', by('calculated')],
      ['not known', unknown],
    ] as const;
    const told = parts.flatMap(([word, names]) =>
      names.length === 0 ? [] : [`${word}: ${names.join(', ')}`],
    );
    return { label: `Gaps on ${valveName(found.found.setUp)},`, text: told.join('; ') };
  });
}

/** The last setting of an adjuster, and by whom. */
function ofAdjuster(report: ReportData): CardItem[] {
  const set = report.lash.lines.findLast(({ moment }) => moment === 'set') ?? report.lash.lines.at(-1);
  const worked = report.workings.findLast(({ computation }) => computation === 'adjuster');
  return [
    set === undefined
      ? { label: 'Last setting:', text: NOT_YET }
      : { label: 'Last setting:', text: sayLash(set), note: `${set.on}, ${set.doneBy || set.reading.by}` },
    ...(worked === undefined ? [] : [{ label: 'Worked out:', text: leadingText(report, worked) }]),
    ...report.lash.questions.map(({ ask }) => ({ label: 'Asked:', text: ask })),
  ];
}

/** Each length with its mark, and a photograph of every mark. */
function ofMarks({ photographs, marks }: ReportData): CardItem[] {
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

function ofTiming(report: ReportData): CardItem[] {
  const names = ['top-dead-centre', 'centreline', 'cam-timing'];
  const last = report.workings.findLast(({ computation }) => names.includes(computation));
  return [{ label: 'Worked out last:', text: last === undefined ? NOT_YET : leadingText(report, last) }];
}

/** The date that was promised; where the part lies is told in a note. */
function ofReturn({ context }: ReportData): CardItem[] {
  const dates = context.notes.filter(({ kind, doneAt }) => kind === 'promise' && doneAt === undefined);
  return [
    {
      label: 'Date promised:',
      text: dates.map(({ due, body }) => `${due ?? 'no date'}, ${body}`).join('; ') || NOT_YET,
    },
    { label: 'Where the part lies:', text: 'as the notes say' },
  ];
}

function ofSwaps({ context, sheet }: ReportData): CardItem[] {
  const decided = (sheet?.springs ?? []).flatMap(({ swaps }) => swaps.map(({ words }) => words));
  const moved = Math.max(0, context.placements.length - context.arms.length);
  return [
    { label: 'Swaps made:', text: moved === 0 ? 'none on record' : `${moved}, in order above` },
    ...decided.map((text) => ({ label: 'Swap test:', text })),
  ];
}

/** Gaps that were read on a sinking lifter read too big. */
function toRetake(report: ReportData): CardItem[] {
  const soft = standingOf(report).filter(
    ({ kind, lifter }) => lifter === 'hydraulic' && GAP_KINDS.some((gap) => gap === kind),
  );
  if (soft.length === 0) return [];
  const named = soft.map(
    ({ kind, cylinder, valve }) => `${SHEET_KINDS[kind].toLowerCase()} ${cylinder} ${valve}`,
  );
  return [{ label: 'To be retaken, read on a hydraulic lifter:', text: named.join('; ') }];
}

const BY_GOAL: Readonly<Record<string, readonly ((report: ReportData) => CardItem[])[]>> = {
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
export function plusCard(report: ReportData): Card {
  const own = (BY_GOAL[report.context.call.goal] ?? []).flatMap((items) => items(report));
  return card('For this kind of call', [...own, ...toRetake(report)], 'Nothing more.');
}
