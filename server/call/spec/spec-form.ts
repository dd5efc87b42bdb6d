import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { buildSpec } from '../../../shared/schemas/build-spec.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { FormGroup } from '../../../views/parts/form.examples.ts';
import { type Extra, type FormState, quantityField, selectField, textField } from '../../web/forms/fields.ts';
import type { PageForm } from '../forms.ts';
import { durationField, durationRows, type SpecField, type SpecGroup } from './spec-fields.ts';
import { specText } from './spec-texts.ts';
import { standsField } from './which-stands.ts';

/** Another revision has come since the form was read: what the others have now, per field. */
export interface OtherSide {
  readonly who: string;
  readonly when: string;
  readonly spec: BuildSpec;
  /** Fields that stand otherwise now than in the form. */
  readonly fields: ReadonlySet<string>;
}

function otherOf(other: OtherSide | undefined, path: string) {
  if (other === undefined || !other.fields.has(path)) return {};
  const value = specText(other.spec, path);
  return { other: { who: other.who, when: other.when, value: value === '' ? 'nothing' : value } };
}

const hinted = (hint: string | undefined) => (hint === undefined ? {} : { hint });

function specComponent(shown: FormState, field: SpecField, extra: Extra): Component {
  const { path, label, dimension, words, hint } = field;
  if (words !== undefined)
    return selectField(shown, path, label, words, { first: 'Not said yet', ...hinted(hint) });
  if (dimension === undefined) return textField(shown, path, label, { ...hinted(hint), ...extra });
  return quantityField(shown, path, label, dimension, {
    ...hinted(hint),
    ...extra,
  });
}

const labelAt = (row: number, valve: string): string => `${row + 1}. Duration, ${valve}: at a lobe lift of`;
const labelFor = (row: number, valve: string): string => `${row + 1}. Duration, ${valve}: degrees`;

/** A lift and the duration at it stand side by side, a row for each pair; at the desk one tap away while none is said. */
function durationGroup(
  shown: FormState,
  valve: 'intake' | 'exhaust',
  rows: number,
  bench: boolean,
  { extra, other }: { readonly extra: (path: string) => Extra; readonly other: OtherSide | undefined },
): FormGroup {
  const fieldsOf = (row: number) =>
    [durationField(valve, row, 'atLift'), durationField(valve, row, 'duration')] as const;
  const pairs = Array.from({ length: rows }, (_, row): Component[] => {
    const [at, duration] = fieldsOf(row);
    return [
      quantityField(shown, at, labelAt(row, valve), 'length', { ...extra(at) }),
      ...standsField(shown, at, labelAt(row, valve), other),
      quantityField(shown, duration, labelFor(row, valve), 'angle', { ...extra(duration) }),
      ...standsField(shown, duration, labelFor(row, valve), other),
    ];
  });
  if (bench) return { slots: pairs.flat() };
  const inUse = Array.from({ length: rows }, (_, row) => fieldsOf(row))
    .flat()
    .some(
      (name) =>
        (shown.typed[name] ?? '') !== '' ||
        shown.faults.some(({ field }) => field === name || field.startsWith(`${name}.`)),
    );
  return {
    legend: `Durations on the card, ${valve}`,
    fold: inUse ? 'open' : 'shut',
    columns: true,
    half: true,
    slots: pairs.flat(),
  };
}

/** Names of the fields of a group, with their labels. */
function labelsOf(groups: readonly SpecGroup[], spec: BuildSpec): Record<string, string> {
  const labels: Record<string, string> = {};
  for (const group of groups) {
    for (const field of group.fields) labels[field.path] = field.label;
    if (group.durations === undefined) continue;
    for (let row = 0; row < durationRows(spec, group.durations); row += 1) {
      labels[durationField(group.durations, row, 'atLift')] = labelAt(row, group.durations);
      labels[durationField(group.durations, row, 'duration')] = labelFor(row, group.durations);
    }
  }
  return labels;
}

/** A group that is seldom asked is shut at the desk while nothing of it is said, asked back or changed by the other side. */
function foldOf(group: SpecGroup, shown: FormState, { bench, other }: SpecFormOf): Pick<FormGroup, 'fold'> {
  if (group.seldom !== true || bench) return {};
  const inUse = group.fields.some(
    ({ path }) =>
      (shown.typed[path] ?? '') !== '' ||
      shown.faults.some(({ field }) => field === path || field.startsWith(`${path}.`)) ||
      other?.fields.has(path) === true,
  );
  return { fold: inUse ? 'open' : 'shut' };
}

interface SpecFormOf {
  readonly name: string;
  readonly action: string;
  readonly groups: readonly SpecGroup[];
  readonly spec: BuildSpec;
  readonly revision: number;
  readonly other: OtherSide | undefined;
  readonly bench: boolean;
  /** It is the one form of its step. */
  readonly alone: boolean;
  readonly part: string;
}

/** A form over groups of the specification. It carries the revision that its writer read. */
export function specForm(of: SpecFormOf): PageForm {
  const labels = labelsOf(of.groups, of.spec);
  const first = of.groups[0]?.fields[0]?.path;
  const extra = (path: string): Extra => ({
    ...otherOf(of.other, path),
    ...(of.bench ? { big: true } : of.alone && path === first ? { autofocus: true } : {}),
  });
  return {
    name: of.name,
    action: of.action,
    labels,
    schema: buildSpec,
    hidden: {
      revision: String(of.revision),
      part: of.part,
      ...(of.other === undefined || of.other.fields.size === 0
        ? {}
        : { asked: [...of.other.fields].join(' ') }),
    },
    initial: Object.fromEntries(Object.keys(labels).map((path) => [path, specText(of.spec, path)])),
    groups: (shown) => {
      const said = of.groups.map(
        (group): FormGroup => ({
          legend: group.legend,
          ...hinted(group.hint),
          ...foldOf(group, shown, of),
          columns: !of.bench,
          half: !of.bench && group.durations !== undefined,
          slots: group.fields.flatMap((field) => [
            specComponent(shown, field, extra(field.path)),
            ...standsField(shown, field.path, field.label, of.other),
          ]),
        }),
      );
      // Both lobes side by side as they stand on a card, and below each its durations.
      const durations = of.groups.flatMap(({ durations: valve }) =>
        valve === undefined
          ? []
          : [durationGroup(shown, valve, durationRows(of.spec, valve), of.bench, { extra, other: of.other })],
      );
      return [...said, ...durations];
    },
    buttons: [
      {
        label: of.bench && of.alone ? 'Save and go on' : 'Save as a new revision',
        ...(of.alone ? { kind: 'primary', key: 'k' } : {}),
      },
    ],
  };
}
