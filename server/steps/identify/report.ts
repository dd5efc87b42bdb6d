import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { PART_KINDS, PART_TOOLS } from '../../../shared/schemas/part-words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { questionTexts } from '../../call/question-form.ts';
import {
  besideComponent,
  inFront,
  type ReportSides,
  runComponents,
  saidComponents,
  sectionComponent,
  sectionOf,
} from '../../call/report-parts.ts';
import type { RankingDetail } from '../../mechanics/assessment/part/detail.ts';
import { sizeSaid } from '../../mechanics/assessment/part/size-said.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import { tableComponent } from '../../web/components.ts';
import { tellText } from './answers.ts';
import { basisText, rankedLines } from './candidate-text.ts';
import { followingComponents } from './following.ts';
import { isMark, type PartSeen } from './of-part.ts';

const NAMES: Readonly<Record<string, string>> = PART_KINDS;

function readAs(reading: PartReading, { detail }: PartSeen): string {
  const text = isMark(reading) ? `“${asEntered(reading.readAs)}”` : asEntered(reading.readAs);
  const own = detail.readings.find(({ entryId }) => entryId === reading.id);
  return [text, reading.place, own?.said ?? ''].filter((each) => each !== '').join(', ');
}

/** Paper is narrow: how far off, and the tool where it was said. */
function howBriefly({ id, tool }: PartReading, { detail }: PartSeen): string {
  const within = detail.readings.find(({ entryId }) => entryId === id)?.within;
  if (within === undefined) return '';
  const said =
    tool === 'not-said' ? '' : tool === 'guess' ? ' (a guess)' : ` by ${PART_TOOLS[tool].toLowerCase()}`;
  return `± ${sizeSaid(within)}${said}; `;
}

/** What was measured, seen and found written, and what was struck out with its reason. */
function measuredComponents(part: PartSeen): Component[] {
  const { standing, all: readings } = part;
  const stands = new Set(standing.map(({ id }) => id));
  const struck = readings.filter((each) => !stands.has(each.id) && !each.struck);
  const why = (old: PartReading) => readings.find(({ id }) => id === old.replacedBy)?.reason ?? '';
  const who = (each: PartReading) => `${howBriefly(each, part)}line ${each.seq}, ${each.by}`;
  const name = ({ kind }: PartReading) => NAMES[kind] ?? kind;
  return [
    ...runComponents(
      'Measured and read',
      standing.map((each) => ({ label: name(each), value: readAs(each, part), note: who(each) })),
    ),
    ...runComponents(
      'Struck out',
      struck.map((each) => ({
        label: name(each),
        value: readAs(each, part),
        note: `${why(each)}; ${who(each)}`,
      })),
    ),
  ];
}

function candidatesTable(ranking: RankingDetail): TableData {
  const { lines, others, note } = rankedLines(ranking, false);
  return {
    caption: 'What it may be',
    columns: [{ label: 'Family' }, { label: 'How likely', number: true }, { label: 'What that is' }],
    rows: lines.map(({ name, share, words, reasons }) => {
      const against = reasons.filter(({ verdict }) => verdict !== undefined && verdict !== 'agrees');
      const why = against
        .map(({ verdict, text }) => `${(verdict ?? '').replace('-', ' ')}: ${text}`)
        .join('; ');
      return { cells: [name, share ?? 'held back', why === '' ? words : { text: words, why }] };
    }),
    note: `${others}${basisText(ranking)} ${note}`,
  };
}

/** What was identified: readings, ranked families with none of these, the fastener and the cover. */
function onePart(context: CallContext, part: PartSeen): ReportSides {
  if (part.standing.length === 0) return inFront([]);
  const { ranking, detail } = part;
  const following = followingComponents(context, part);
  const name = detail.about.name;
  // Which part it is stands in front where the call asks that.
  const asked = context.plan.report.includes('part');
  const mayBe = ranking === undefined ? [] : [tableComponent(candidatesTable(ranking))];
  const implied = ranking?.implied.map(({ title, sentence }) => `${title}: ${sentence}`) ?? [];
  return {
    components: [
      sectionComponent(name === undefined ? 'The part in the hand' : `In the hand: ${name}`, [
        ...(detail.arm === undefined ? [] : saidComponents('Which arm', [detail.arm.sentence])),
        ...(following.length > 0 ? [besideComponent(...following)] : []),
        ...(asked ? mayBe : []),
      ]),
    ],
    back: sectionOf(`As measured: ${name ?? 'the part in the hand'}`, [
      ...measuredComponents(part),
      ...(asked ? [] : mayBe),
      ...saidComponents('What that would mean', implied),
      ...saidComponents('It asks', questionTexts(part.questions)),
      ...(ranking === undefined ? [] : saidComponents('What would tell more', [tellText(ranking)])),
    ]),
  };
}

/** Each part in the hand of which something was read. */
export function partReport(parts: readonly PartSeen[], context: CallContext): ReportSides {
  const all = parts.map((part) => onePart(context, part));
  return {
    components: all.flatMap(({ components }) => components),
    back: all.flatMap(({ back }) => back),
  };
}
