import type { Component } from '../../../views/parts/components.ts';
import { judgedMarks } from '../../assessment/tip-marks/judged.ts';
import type { Registered } from '../../compute/registry.ts';
import type { Tx } from '../../database/database.ts';
import { lashLogOf } from '../../records/lash-log/lash-log.ts';
import { listWorkings, type Working } from '../../records/workings/workings.ts';
import { lashPart } from '../../steps/adjuster/lash-part.ts';
import { marksPart } from '../../steps/geometry/marks-part.ts';
import { tableComponent } from '../../web/components.ts';
import type { PageRequest } from '../../web/page-route.ts';
import type { CallContext } from '../context.ts';
import { foldComponent } from '../fold.ts';
import type { RejectedForm, StepBody } from '../forms.ts';
import { formComponent } from '../forms.ts';
import { arranged, drawingComponents, neutralDrawings } from './asked-drawings.ts';
import { saidOf } from './follow-up.ts';
import { keptComponents } from './kept-answer.ts';
import { type OnStep, openingPart, overviewTable, screensOf } from './overview.ts';
import { PART_WORDS } from './part-words.ts';
import { COMPUTED_BY, PART_TITLES, type PartName, partNamed, type WorkedStep } from './parts.ts';
import { type Chain, chainOf } from './timing-chain.ts';
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
  context: CallContext,
  step: WorkedStep,
  part: PartName,
  on: OnStep,
  computations: ReadonlyMap<string, Registered>,
  rejected: RejectedForm | undefined,
): StepBody {
  const each = computations.get(COMPUTED_BY[part] ?? '');
  if (each === undefined) throw new Error(`the part ${part} has no computation`);
  const form = workingForm(context, step, part, each, chainOf(on.workings), rejected);
  const last = lastOf(part, on.workings);
  const drawings = drawingComponents(neutralDrawings(part, rejected?.typed ?? form.initial ?? {}));
  const entry = context.call.held ? [] : [formComponent(form, rejected)];
  const top = last === undefined ? [] : saidOf(context, part, on.workings, last);
  const rest = last === undefined ? [] : keptComponents(last, each);
  return {
    forms: context.call.held ? [] : [form],
    slots: arranged(context, { drawings, entry, top, rest, begun: last !== undefined }),
  };
}

/** Which part came back with a fault. */
function returned(step: WorkedStep, rejected: RejectedForm | undefined): PartName | undefined {
  if (rejected === undefined) return undefined;
  const { form, part, computation } = rejected.typed;
  if (form === 'mark') return 'marks';
  if (form === 'lash') return 'lash';
  return form === 'working' ? (partNamed(step, part) ?? partNamed(step, computation)) : undefined;
}

/** A step that computes and measures: one of its parts, with the drawing of what is measured, its form, and what was kept. */
export async function workingStep(
  tx: Tx,
  context: CallContext,
  req: PageRequest,
  step: WorkedStep,
  computations: ReadonlyMap<string, Registered>,
  rejected: RejectedForm | undefined,
): Promise<StepBody> {
  const buildId = context.build.id;
  const workings = await listWorkings(tx, context.principal, buildId);
  const on: OnStep = {
    workings,
    marks: step === 'geometry' ? await judgedMarks(tx, context.principal, buildId) : undefined,
    log: step === 'adjuster' ? await lashLogOf(tx, context.principal, buildId) : undefined,
  };
  const part = returned(step, rejected) ?? partNamed(step, req.query.of) ?? openingPart(context, step, on);
  const body =
    part === 'marks' && on.marks !== undefined
      ? marksPart(context, on.marks, rejected)
      : part === 'lash' && on.log !== undefined
        ? lashPart(context, on.log, rejected)
        : computedPart(context, step, part, on, computations, rejected);
  const overview = tableComponent(overviewTable(context, step, part, on));
  const heading: Component = { template: '/pages/call/heading', data: { text: PART_TITLES[part] } };
  return {
    forms: body.forms,
    slots:
      context.side === 'desk'
        ? [heading, ...body.slots, overview]
        : [heading, ...body.slots, foldComponent('parts-of-step', 'All parts of this step', [overview])],
    screens: screensOf(context, step, part),
    words: PART_WORDS[part],
  };
}
