import type { PagerData } from '../../../views/parts/pager.examples.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import type { JudgedMarks } from '../../assessment/tip-marks/judged.ts';
import type { LashLog } from '../../records/lash-log/lash-log.ts';
import type { Working } from '../../records/workings/workings.ts';
import type { CallContext } from '../context.ts';
import { COMPUTED_BY, PART_TITLES, PARTS, type PartName, type WorkedStep } from './parts.ts';
import { chainOf, degreesText, type KeptPeak } from './timing-chain.ts';

export interface OnStep {
  readonly workings: readonly Working[];
  readonly marks?: JudgedMarks | undefined;
  readonly log?: LashLog | undefined;
}

const counted = (many: number, one: string, more: string): string => `${many} ${many === 1 ? one : more}`;

const peakSaid = ({ working, side, centreline, advance }: KeptPeak): string =>
  `line ${working.seq}: ${side} ${degreesText(centreline)}°${advance === undefined ? '' : `, ${degreesText(Math.abs(advance))}° ${advance < 0 ? 'retarded' : 'advanced'}`}`;

/** What is of a part, in a few words; empty where nothing does. */
function standing(part: PartName, { workings, marks, log }: OnStep): string {
  const { stop, peaks, events } = chainOf(workings);
  switch (part) {
    case 'marks': {
      const valves = marks?.valves ?? [];
      const all = valves.reduce((sum, valve) => sum + valve.marks.length, 0);
      return all === 0
        ? ''
        : `${counted(all, 'mark', 'marks')} on ${counted(valves.length, 'valve', 'valves')}`;
    }
    case 'lash': {
      const lines = log?.lines.length ?? 0;
      return lines === 0 ? '' : counted(lines, 'line', 'lines');
    }
    case 'top-dead-centre':
      return stop === undefined
        ? ''
        : `line ${stop.working.seq}: the pointer is ${degreesText(Math.abs(stop.correction))}° out`;
    case 'centreline':
      return peaks.map(peakSaid).join('; ');
    case 'events':
      return events.map(peakSaid).join('; ');
    default: {
      const last = workings.findLast(({ computation }) => computation === COMPUTED_BY[part]);
      return last === undefined ? '' : `line ${last.seq}`;
    }
  }
}

/** The part a step opens with: the one asked for, what the caller rang about, or the first that nothing stands of. */
export function openingPart(context: CallContext, step: WorkedStep, on: OnStep): PartName {
  if (step === 'adjuster' && context.call.goal === 'noise-or-failure') return 'lash';
  const chain: readonly PartName[] =
    step === 'timing' ? ['top-dead-centre', 'centreline', 'events'] : PARTS[step].slice(0, 1);
  return chain.find((part) => standing(part, on) === '') ?? chain.at(-1) ?? PARTS[step][0];
}

const addressOf = (context: CallContext, step: WorkedStep, part: PartName) =>
  `${context.base}/steps/${step}?of=${part}`;

/** The parts of the step, what is on record of each, and the way to it. */
export function overviewTable(
  context: CallContext,
  step: WorkedStep,
  current: PartName,
  on: OnStep,
): TableData {
  return {
    caption: step === 'timing' ? 'The chain: each one feeds the next' : 'The parts of this step',
    columns: [{ label: 'Part' }, { label: 'On record' }],
    rows: PARTS[step].map((part) => {
      const stands = standing(part, on) || 'nothing kept yet';
      const cell: TableCell =
        part === current
          ? { text: stands, why: 'open here' }
          : { text: stands, href: addressOf(context, step, part) };
      return { cells: [PART_TITLES[part], cell] };
    }),
  };
}

/** At the bench the parts are screens, one after the other. */
export function screensOf(
  context: CallContext,
  step: WorkedStep,
  current: PartName,
): Partial<Omit<PagerData, 'label'>> {
  const parts: readonly PartName[] = PARTS[step];
  const at = parts.indexOf(current);
  const link = (part: PartName) => ({ href: addressOf(context, step, part), label: PART_TITLES[part] });
  const [before, after] = [parts[at - 1], parts[at + 1]];
  return {
    ...(before === undefined ? {} : { previous: link(before) }),
    position: `${at + 1} of ${parts.length}`,
    ...(after === undefined ? {} : { next: link(after) }),
  };
}
