import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { faultsOf } from './compile.ts';

/** A small edit of a real file that must not compile. */
interface Mistake {
  readonly mistake: string;
  readonly file: string;
  readonly from: string;
  readonly to: string;
  /** What the compiler says of it. */
  readonly says: RegExp;
}

const MISTAKES: readonly Mistake[] = [
  {
    mistake: 'a field of the schema is left out of the answer',
    file: 'server/records/builds/view.ts',
    from: '    label: build.label,\n',
    to: '',
    says: /Property 'label' is missing/,
  },
  {
    mistake: 'a field that may be missing is forgotten in the answer',
    file: 'server/records/notes/view.ts',
    from: '    due: note.due,\n',
    to: '',
    says: /Property 'due' is missing/,
  },
  {
    mistake: 'a field is answered that the schema does not have',
    file: 'server/records/arms/view.ts',
    from: '    family: arm.family,\n',
    to: '    family: arm.family,\n    shopId: arm.id,\n',
    says: /'shopId' does not exist/,
  },
  {
    mistake: 'a field comes into the schema and is filled nowhere',
    file: 'server/records/calls/view.ts',
    from: '    holdReason: z.string(),\n',
    to: '    holdReason: z.string(),\n    heldBy: z.string().optional(),\n',
    says: /Property 'heldBy' is missing/,
  },
  {
    mistake: 'a date goes out as it is',
    file: 'server/records/share-links/view.ts',
    from: 'createdAt: link.createdAt.toISOString()',
    to: 'createdAt: link.createdAt',
    says: /Type 'Date' is not assignable/,
  },
  {
    mistake: 'a computed length goes out in SI',
    file: 'server/assessment/consequences/change-view.ts',
    from: "lengths: encoded(changeFieldsView.lengths, figures('length'), 'inch')",
    to: "lengths: figures('length')",
    says: /Type 'number' is not assignable/,
  },
  {
    mistake: 'a computed result goes out in SI',
    file: 'server/assessment/ratio-view.ts',
    from: "encoded(ratioThroughLift.output, result, 'inch')",
    to: 'result',
    says: /is not assignable to type/,
  },
  {
    mistake: 'a route answers with a domain object',
    file: 'server/api/calls.ts',
    from: 'showCallOf(await readBuildRecord(tx, principal, { callId: params.id }), params.id)',
    to: 'readBuildRecord(tx, principal, { callId: params.id })',
    says: /Type 'Promise<BuildRecord>' is not assignable/,
  },
  {
    mistake: 'a route answers with something else than it declares',
    file: 'server/api/builds.ts',
    from: 'return showBuild(build);',
    to: 'return answer(armsView, { arms: [], now: [], placements: [] });',
    says: /is not assignable to type/,
  },
  {
    mistake: 'a command tells a secret that its schema does not have',
    file: 'server/api/access/keys.ts',
    from: 'once: { secret } };',
    to: 'once: { hash: secret } };',
    says: /'\{ hash: string; \}' has no properties in common/,
  },
  {
    mistake: 'a column is left out of an INSERT',
    file: 'server/records/workings/workings.ts',
    from: '          computation: computation.name,\n          inputs',
    to: '          inputs',
    says: /Property 'computation' is missing/,
  },
  {
    mistake: 'a column that may be null is left out of an INSERT',
    file: 'server/records/answers/answers.ts',
    from: '        question_id: questionId ?? null,\n',
    to: '',
    says: /Property 'question_id' is missing/,
  },
  {
    mistake: 'an event that nobody declared is emitted',
    file: 'server/records/workings/workings.ts',
    from: "emit(WORKING_EVENTS['working-kept'], {",
    to: "emit('torque-kpet', {",
    says: /'string' is not assignable to parameter of type 'EventDefinition/,
  },
  {
    mistake: 'the name of an event is misspelt where it is emitted',
    file: 'server/records/workings/workings.ts',
    from: "WORKING_EVENTS['working-kept']",
    to: "WORKING_EVENTS['working-kpet']",
    says: /Property 'working-kpet' does not exist/,
  },
  {
    mistake: 'an event is emitted without something that it keeps',
    file: 'server/records/workings/workings.ts',
    from: '{ computation: name, title }',
    to: '{ computation: name }',
    says: /Property 'title' is missing/,
  },
  {
    mistake: 'an event is emitted with something that it does not keep',
    file: 'server/records/calls/change-call.ts',
    from: '{ callId, outcome }',
    to: '{ callId, outcome, reason: outcome }',
    says: /'reason' does not exist/,
  },
  {
    mistake: 'an event has no line on the tape',
    file: 'server/steps/notes/tape-text.ts',
    from: "  'note-kept': ({ body }) => ({ kind: 'note', text: body }),\n",
    to: '',
    says: /Property ''note-kept'' is missing|Property '"note-kept"' is missing/,
  },
  {
    mistake: 'the tape reads what an event does not keep',
    file: 'server/steps/notes/tape-text.ts',
    from: '({ body, restsOn })',
    to: '({ body, rests: restsOn })',
    says: /Property 'rests' does not exist/,
  },
  {
    mistake: 'the events of a step are told by nobody',
    file: 'server/steps/index.ts',
    from: '  ...triageStep.told,\n',
    to: '',
    says: /hold-set/,
  },
  {
    mistake: 'it is asked whether an event happened that nobody declared',
    file: 'server/live/stream.ts',
    from: "SHARE_LINK_EVENTS['link-revoked']",
    to: "SHARE_LINK_EVENTS['link-ended']",
    says: /Property 'link-ended' does not exist/,
  },
  {
    mistake: 'a step is left out of the list of steps',
    file: 'server/steps/index.ts',
    from: '  timing: timingStep,\n',
    to: '',
    says: /Property 'timing' is missing/,
  },
  {
    mistake: 'a step is left out of what is asked for',
    file: 'server/mechanics/assessment/missing/missing.ts',
    from: '  timing: ofTiming,\n',
    to: '',
    says: /Property 'timing' is missing/,
  },
  {
    mistake: 'a step declares itself without its cautions',
    file: 'server/steps/timing/step.ts',
    from: '  cautions: () => [],\n',
    to: '',
    says: /Property 'cautions' is missing/,
  },
  {
    mistake: 'a member of a component is misspelt',
    file: 'server/desk/calls/list-page.ts',
    from: "    caption: 'Newest first",
    to: "    captoin: 'Newest first",
    says: /'captoin' does not exist/,
  },
  {
    mistake: 'a goal has no plan',
    file: 'shared/schemas/goals.ts',
    from: '  geometry: {\n    asks',
    to: '  geometri: {\n    asks',
    says: /geometri/,
  },
];

const beside = (mistake: Mistake, name: string) => `${path.dirname(mistake.file)}/${name}.ts`;
const copyOf = (mistake: Mistake) => beside(mistake, `unedited-${MISTAKES.indexOf(mistake)}`);
const editOf = (mistake: Mistake) => beside(mistake, `edited-${MISTAKES.indexOf(mistake)}`);

let faults: Map<string, string[]>;

beforeAll(() => {
  const files = MISTAKES.flatMap((each) => {
    const text = readFileSync(new URL(`../../${each.file}`, import.meta.url), 'utf8');
    if (!text.includes(each.from)) throw new Error(`${each.file} has no longer ${each.from}`);
    return [[copyOf(each), text] as const, [editOf(each), text.replace(each.from, each.to)] as const];
  });
  faults = faultsOf(new Map(files));
});

describe('mistakes that would be silent at run time do not compile', () => {
  test.each(MISTAKES.map((each) => [each.mistake, each] as const))('%s', (_, each) => {
    expect(faults.get(copyOf(each)), 'without the edit it compiles').toEqual([]);
    expect(faults.get(editOf(each))?.join('\n')).toMatch(each.says);
  });
});
