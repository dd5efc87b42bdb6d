import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import {
  BUILD_GROUPS,
  CAM_GROUPS,
  durationField,
  durationRows,
  ROCKER_GROUP,
  type SpecField,
  type SpecGroup,
} from './spec-fields.ts';
import { readText } from './spec-texts.ts';

const wordOf = (field: SpecField, text: string) => field.words?.[text] ?? text;

function durations(spec: BuildSpec, valve: 'intake' | 'exhaust'): Fact[] {
  return Array.from({ length: durationRows(spec, valve) }, (_, row) => {
    const at = readText(spec, durationField(valve, row, 'atLift'));
    const duration = readText(spec, durationField(valve, row, 'duration'));
    return { label: `Duration above ${at}`, value: duration };
  }).filter((fact) => fact.value !== '');
}

function factsOf(spec: BuildSpec, group: SpecGroup): Fact[] {
  const known = group.fields
    .map((field) => ({ label: field.label, value: wordOf(field, readText(spec, field.path)) }))
    .filter((fact) => fact.value !== '');
  return [...known, ...(group.durations === undefined ? [] : durations(spec, group.durations))];
}

/** Everything known of a build at one revision, group by group; what is not known is left out. */
export function specFacts(spec: BuildSpec): { legend: string; facts: Fact[] }[] {
  return [...BUILD_GROUPS, ...CAM_GROUPS, ROCKER_GROUP]
    .map((group) => ({ legend: group.legend, facts: factsOf(spec, group) }))
    .filter((group) => group.facts.length > 0);
}
