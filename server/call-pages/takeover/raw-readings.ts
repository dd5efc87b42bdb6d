import { PART_KINDS } from '../../../shared/schemas/part-words.ts';
import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { keysOf, LASH_STATES, LIFTERS, READING_KINDS, SPRINGS } from '../../../shared/schemas/words.ts';
import type { Card, CardItem } from '../../../views/pages/pages.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { ReportData } from '../report/report-data.ts';
import { isMark } from '../report/sections/identified.ts';
import { sayLash } from '../report/sections/marks.ts';
import { card } from './cards.ts';

const bare = (text: string): string => text.replaceAll(/ in\b/g, '');

/** `.847, .848, .847 in`: the unit once, behind the last of those that share it. */
const listed = (texts: readonly string[], between = ', '): string =>
  texts.map((text, index) => (index === texts.length - 1 ? text : bare(text))).join(between);

/** A pass as it was read; one that was struck or replaced in brackets, with the reason. */
function sayPass(reading: Reading, all: readonly Reading[]): string {
  const later = all.find(({ id }) => id === reading.replacedBy);
  const text = reading.peak.readAs;
  return later === undefined ? text : `(${bare(text)}: ${later.reason})`;
}

const KINDS: Readonly<Record<string, string>> = READING_KINDS;

function ofSetUp(context: CallContext, index: number): CardItem[] {
  const setUp = context.setUps[index];
  if (setUp === undefined) return [];
  const { spring, lifter, lash } = setUp.method;
  const read = context.readings.filter((each) => each.setUpId === setUp.id && !each.struck);
  const kinds = [...new Set(read.map(({ kind }) => kind))];
  const texts = kinds.map((kind) => {
    const passes = read.filter((each) => each.kind === kind).map((each) => sayPass(each, context.readings));
    return `${(KINDS[kind] ?? kind).toLowerCase()} ${listed(passes)}`;
  });
  return [
    {
      label: `${valveName(setUp)}, set-up ${setUp.number}:`,
      text: texts.length === 0 ? 'no pass yet' : texts.join('; '),
      note: [SPRINGS[spring], LIFTERS[lifter], `lash ${LASH_STATES[lash].toLowerCase()}`]
        .join(', ')
        .toLowerCase(),
    },
  ];
}

/** Kind by kind and side by side: `1 .847, 8 .846`, in the order in which the valves were read. */
function ofSheet(readings: readonly SheetReading[]): CardItem[] {
  const standing = stillStanding(readings);
  return keysOf(SHEET_KINDS).flatMap((kind) => {
    const read = standing.filter((each) => each.kind === kind);
    const ways = [...new Set(read.map(({ valve, spring, arms }) => `${valve} ${spring} ${arms}`))];
    return ways.map((way) => {
      const these = read.filter(({ valve, spring, arms }) => `${valve} ${spring} ${arms}` === way);
      const [first] = these;
      const onSpring = first === undefined || first.spring === 'not-said' ? '' : `, ${first.spring} spring`;
      const before = first?.arms === 'before' ? ', arms before' : '';
      return {
        label: `${SHEET_KINDS[kind]}, ${first?.valve ?? ''}${onSpring}${before}:`,
        text: listed(
          these.map((each) => `${each.cylinder}: ${each.reading.readAs}`),
          '; ',
        ),
      };
    });
  });
}

const NAMES: Readonly<Record<string, string>> = PART_KINDS;

function ofPart({ partReadings }: CallContext): CardItem[] {
  const read = stillStanding(partReadings).filter((each) => !isMark(each));
  if (read.length === 0) return [];
  const texts = read.map((each) => `${(NAMES[each.kind] ?? each.kind).toLowerCase()} ${each.readAs}`);
  return [{ label: 'Part in the hand:', text: texts.join('; ') }];
}

function ofMarks({ valves }: ReportData['marks']): CardItem[] {
  return valves.map((valve) => ({
    label: `Tip mark ${valveName(valve)}:`,
    text: valve.marks.map(({ readAs }) => readAs).join('; '),
  }));
}

/** Lashes that were set or found on a day; what is on the sheet alone stands above. */
function ofLog({ lines }: ReportData['lash']): CardItem[] {
  const logged = lines.filter(({ moment, engine }) => moment === 'set' || engine !== 'not-said');
  if (logged.length === 0) return [];
  return [{ label: 'Lash log:', text: logged.map((line) => `${line.on} ${sayLash(line)}`).join('; ') }];
}

/** Every raw reading that stands, struck passes with their reason. */
export const rawCard = ({ context, sheet, marks, lash }: ReportData): Card =>
  card(
    'Raw readings',
    [
      ...context.setUps.flatMap((_, index) => ofSetUp(context, index)),
      ...ofSheet(sheet?.readings ?? []),
      ...ofPart(context),
      ...ofMarks(marks),
      ...ofLog(lash),
    ],
    'No reading yet.',
  );
