import { memberOf } from '../../shared/member.ts';
import type { ComputedAnswer } from '../../views/pages/reference/pages.ts';
import type { FormData } from '../../views/parts/form.examples.ts';
import type { NoticeData } from '../../views/parts/notice.examples.ts';
import type { Registered } from '../compute/registry.ts';
import { answerComponents } from '../compute-forms/answer/answer-components.ts';
import type { Computed } from '../compute-forms/compute-form.ts';
import { formGroups, rowButtons } from '../compute-forms/form/fields-of.ts';
import { leavesOf } from '../compute-forms/form/leaves.ts';
import { drawingsOf } from '../drawings/registry.ts';
import { drawingComponent } from '../web/components.ts';
import { choiceField, type FormState, fieldId } from '../web/forms/fields.ts';
import type { Page } from '../web/pages/render.ts';
import { entryTables } from './entry-tables.ts';
import { equationLines } from './equation.ts';
import { jsonCall, jsonShown } from './json-call.ts';

/** Longer addresses are cut by something on the way. */
const LONGEST_LINK = 1800;
const UNITS = { inch: 'inch', metric: 'metric' };

function formOf(each: Registered, { controls, typed, units, faults }: Computed): FormData {
  const shown: FormState = { typed: { ...typed, units }, faults };
  return {
    action: `/reference/${each.name}#answer`,
    groups: [
      ...formGroups(controls, shown),
      { slots: [choiceField(shown, 'units', 'Answer in', UNITS, { inline: true })] },
    ],
    buttons: [
      { label: 'Compute', kind: 'primary' },
      ...rowButtons(controls, shown),
      { label: 'Put the example back', href: `/reference/${each.name}` },
    ],
  };
}

function summaryOf(computed: Computed): { field?: string; text: string }[] {
  const labels = new Map(leavesOf(computed.controls, computed.typed).map((leaf) => [leaf.name, leaf.label]));
  return computed.faults.map(({ field, detail }) => {
    const label = labels.get(field);
    return label === undefined ? { text: detail } : { field: fieldId(field), text: `${label}: ${detail}` };
  });
}

/** The address that shows this result again, if it is short enough to be sent. */
function linkTo(each: Registered, { typed, units }: Computed): string | undefined {
  const { more: _, ...kept } = typed;
  const filled = Object.entries({ ...kept, units }).filter(([, text]) => text.trim() !== '');
  const link = `/reference/${each.name}?${new URLSearchParams(filled)}`;
  return link.length > LONGEST_LINK ? undefined : link;
}

function halfWidth(body: unknown, each: Registered, units: Computed['units']): number {
  const given = memberOf(body, 'uncertainty');
  if (given === undefined) return 0;
  const parsed = each.input.safeParse(body);
  const si = parsed.success ? memberOf(parsed.data, 'uncertainty') : 0;
  return typeof si === 'number' ? si / (units === 'inch' ? 0.0254 : 0.001) : 0;
}

function limitSource(body: unknown, answer: { readonly assumptions: readonly string[] }): string {
  if (memberOf(body, 'limit') !== undefined) return 'as typed above';
  return answer.assumptions.find((each) => each.includes('limit')) ?? 'the default of the limits table';
}

function answerOf(each: Registered, computed: Computed, isExample: boolean): ComputedAnswer | undefined {
  const { answer, inInches, body, units } = computed;
  if (answer === undefined || inInches === undefined) return undefined;
  const [leading, ...rest] = answerComponents(
    each,
    { body, answer },
    {
      uncertainty: halfWidth(body, each, units),
      limitSource: limitSource(body, answer),
    },
  );
  const drawings = drawingsOf(each, body, inInches.result, units).map(drawingComponent);
  return {
    title: isExample ? 'The worked example' : 'The answer',
    cautions: answer.cautions.map((text): NoticeData => ({ kind: 'caution', text })),
    assumptions: answer.assumptions,
    slots: [...(leading === undefined ? [] : [leading]), ...drawings, ...rest],
    link: isExample ? undefined : linkTo(each, computed),
    json: jsonShown(answer.result),
  };
}

/** The page of one computation: what it does, its form and answer, what it rests on, and its JSON call. */
export function computationPage(
  each: Registered,
  computed: Computed,
  options: { readonly origin: string; readonly isExample: boolean },
): Page {
  const wrong = computed.faults.length > 0;
  return {
    template: 'reference-computation',
    title: wrong ? `Error: ${each.title}` : each.title,
    status: wrong ? 422 : 200,
    place: '/reference',
    data: {
      title: each.title,
      summary: each.summary,
      errors: summaryOf(computed),
      equations: equationLines(each.tex),
      equationText: each.equation,
      form: formOf(each, computed),
      answer: answerOf(each, computed, options.isExample),
      basis: [
        { label: 'Source', value: each.source },
        { label: 'Holds for', value: each.validity },
      ],
      tables: entryTables(each),
      call: jsonCall(options.origin, each.name, wrong ? each.example.inputs : computed.body, computed.units),
    },
  };
}
