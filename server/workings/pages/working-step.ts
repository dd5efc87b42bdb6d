import type { Slot } from '../../../views/parts/part.ts';
import { foldSlot } from '../../calls/pages/fold-slot.ts';
import type { Again, StepBody } from '../../calls/pages/forms-on-page.ts';
import { formSlot } from '../../calls/pages/forms-on-page.ts';
import type { Sight } from '../../calls/pages/sight.ts';
import type { Registered } from '../../compute/registry.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import { lashLogOf } from '../../lash-log/lash-log.ts';
import { lashPart } from '../../lash-log/pages/lash-part.ts';
import { judgedMarks } from '../../tip-marks/judged.ts';
import { marksPart } from '../../tip-marks/pages/marks-part.ts';
import { listWorkings, type Working } from '../workings.ts';
import { type Chain, chainOf } from './chain.ts';
import { keptSlots } from './kept.ts';
import { COMPUTED_BY, PART_TITLES, type PartName, partNamed, type WorkedStep } from './kinds.ts';
import { arranged, drawingSlots, neutralDrawings } from './neutral.ts';
import { type OnStep, openingPart, overviewTable, screensOf } from './overview.ts';
import { PART_WORDS } from './part-words.ts';
import { saidOf } from './said.ts';
import { workingForm } from './working-form.ts';

/** The last line that was kept of a part: its own computation, and of a centreline its own way to it. */
function lastOf(part: PartName, workings: readonly Working[]): Working | undefined {
  const { peaks, events } = chainOf(workings);
  const newest = (of: Chain['peaks']) =>
    of
      .map(({ working }) => working)
      .sort((a, b) => a.seq - b.seq)
      .at(-1);
  if (part === 'centreline') return newest(peaks);
  if (part === 'events') return newest(events);
  return workings.findLast(({ computation }) => computation === COMPUTED_BY[part]);
}

function computedPart(
  sight: Sight,
  step: WorkedStep,
  part: PartName,
  on: OnStep,
  computations: ReadonlyMap<string, Registered>,
  again: Again | undefined,
): StepBody {
  const each = computations.get(COMPUTED_BY[part] ?? '');
  if (each === undefined) throw new Error(`the part ${part} has no computation`);
  const form = workingForm(sight, step, part, each, chainOf(on.workings), again);
  const last = lastOf(part, on.workings);
  const drawings = drawingSlots(neutralDrawings(part, again?.typed ?? form.initial ?? {}));
  const entry = sight.call.held ? [] : [formSlot(form, again)];
  const top = last === undefined ? [] : saidOf(sight, part, on.workings, last);
  const rest = last === undefined ? [] : keptSlots(last, each);
  return {
    forms: sight.call.held ? [] : [form],
    slots: arranged(sight, { drawings, entry, top, rest, begun: last !== undefined }),
  };
}

/** Which part came back with a fault. */
function returned(step: WorkedStep, again: Again | undefined): PartName | undefined {
  if (again === undefined) return undefined;
  const { form, part, computation } = again.typed;
  if (form === 'mark') return 'marks';
  if (form === 'lash') return 'lash';
  return form === 'working' ? (partNamed(step, part) ?? partNamed(step, computation)) : undefined;
}

/** A step that computes and measures: one of its parts, with the drawing of what is measured, its form, and what was kept. */
export async function workingStep(
  tx: Tx,
  sight: Sight,
  given: PageRequest,
  step: WorkedStep,
  computations: ReadonlyMap<string, Registered>,
  again: Again | undefined,
): Promise<StepBody> {
  const buildId = sight.build.id;
  const workings = await listWorkings(tx, sight.caller, buildId);
  const on: OnStep = {
    workings,
    marks: step === 'geometry' ? await judgedMarks(tx, sight.caller, buildId) : undefined,
    log: step === 'adjuster' ? await lashLogOf(tx, sight.caller, buildId) : undefined,
  };
  const part = returned(step, again) ?? partNamed(step, given.query.of) ?? openingPart(sight, step, on);
  const body =
    part === 'marks' && on.marks !== undefined
      ? marksPart(sight, on.marks, again)
      : part === 'lash' && on.log !== undefined
        ? lashPart(sight, on.log, again)
        : computedPart(sight, step, part, on, computations, again);
  const overview = overviewTable(sight, step, part, on);
  const heading: Slot = { template: '/pages/call/heading', data: { text: PART_TITLES[part] } };
  return {
    forms: body.forms,
    slots:
      sight.side === 'desk'
        ? [heading, ...body.slots, overview]
        : [heading, ...body.slots, foldSlot('parts-of-step', 'All parts of this step', [overview])],
    screens: screensOf(sight, step, part),
    words: PART_WORDS[part],
  };
}
