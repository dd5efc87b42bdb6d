import { inSpoken } from '../../../shared/quantities/authored.ts';
import { formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import { correctSetUp, MAY_BE_UNKNOWN, strikeSetUp } from '../../../shared/schemas/method.ts';
import { type CallContext, callIdOf, valveName } from '../../call/context.ts';
import { formComponent, type PageForm, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { type ShownSetUp, shownSetUps } from '../../call/shown-set-up.ts';
import type { EntryCorrection } from '../../call/step-correction.ts';
import { addressOf, spokenIn } from '../../call/step-form.ts';
import type { Tx } from '../../database/database.ts';
import { notFound } from '../../problems/failure.ts';
import { type Call, getCall } from '../../records/calls/calls.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { putSetUpRight } from '../../records/set-ups/put-right.ts';
import { noticeComponent } from '../../web/components.ts';
import type { FormAnswer } from '../../web/form-route.ts';
import { textField } from '../../web/forms/fields.ts';
import { picksOf } from '../../web/forms/picked-reading.ts';
import { type Fields, readForm } from '../../web/forms/read-form.ts';
import type { PageRequest } from '../../web/page-request.ts';
import { formGroup, SET_UP_GROUPS, SET_UP_LABELS } from './set-up-fields.ts';
import { fieldsOfSetUp } from './set-up-form.ts';

const LABELS = { ...SET_UP_LABELS, method: 'What is put right', reason: 'What was said, and by whom' };
const WAS = 'was-';

const HOLDS =
  'What is put right here holds for the readings already there: nobody types them again. What was said before stays on the record.';

/** As it is known now, what was answered to questions among it. */
function knownFields({ setUp, detail }: ShownSetUp): Fields {
  const { spring, lifter, lash, restsOn, alignment, lobeSource, lashSetting, cylinder, valve, tool } =
    detail.setUp;
  return {
    ...fieldsOfSetUp(setUp),
    cylinder: String(cylinder),
    valve,
    'method.spring': spring,
    'method.lifter': lifter,
    'method.lash': lash,
    'method.tool': tool ?? 'indicator',
    'method.restsOn': restsOn,
    'method.alignment': alignment,
    'method.lobeSource': lobeSource,
    'method.lashSetting': lashSetting === undefined ? '' : formatQuantity(fromSi(lashSetting, 'in')),
  };
}

/** The set-up's own form, filled in; what it stood as goes along, so that only what was changed is said. */
function putRightForm(context: CallContext, found: ShownSetUp): PageForm {
  const initial = knownFields(found);
  const { id } = found.setUp;
  return {
    name: 'put-right',
    action: `${context.base}/set-ups/${id}/correct`,
    labels: LABELS,
    schema: correctSetUp,
    initial,
    hidden: Object.fromEntries(Object.entries(initial).map(([name, value]) => [`${WAS}${name}`, value])),
    groups: (shown) => [
      ...SET_UP_GROUPS.map((group) => formGroup(group, shown, context)),
      {
        slots: [
          textField(shown, 'reason', LABELS.reason, {
            hint: inSpoken('Such as “the caller says the lash was .020 when these were read”.'),
          }),
        ],
      },
    ],
    buttons: [
      { label: 'Put this set-up right', kind: 'primary', key: 'k' },
      // One with readings is put right: they are of something.
      ...(stillStanding(found.readings).length > 0
        ? []
        : [{ label: 'Strike it out', kind: 'danger', name: 'act', value: 'strike' } as const]),
      { label: 'Leave it', href: `${context.base}/steps/ratio?set-up=${id}` },
    ],
  };
}

const NAMES: Readonly<Record<(typeof MAY_BE_UNKNOWN)[number], string>> = {
  armId: 'armId',
  lashSetting: 'method.lashSetting',
  travel: 'method.travel',
  pushedIn: 'method.pushedIn',
};

/** Only what was changed is said; a field that was emptied is not known after all. */
function changedFields(posted: Fields): Fields {
  const was = (name: string) => posted[`${WAS}${name}`] ?? '';
  const names = Object.keys(SET_UP_LABELS);
  const changed = names.filter((name) => posted[name] !== undefined && posted[name] !== was(name));
  const emptied = MAY_BE_UNKNOWN.filter(
    (fact) => changed.includes(NAMES[fact]) && posted[NAMES[fact]] === '',
  );
  return {
    ...Object.fromEntries(changed.map((name) => [name, posted[name] ?? ''])),
    ...Object.fromEntries(emptied.map((fact, index) => [`notKnown.${index}`, fact])),
    ...picksOf(posted),
    reason: posted.reason ?? '',
  };
}

function body(context: CallContext, found: ShownSetUp, rejected: RejectedForm | undefined): StepBody {
  const form = putRightForm(context, found);
  return { forms: [form], slots: [noticeComponent(HOLDS), formComponent(form, rejected)] };
}

/** One that was begun by mistake: only the reason is read. */
async function strikeOut(tx: Tx, req: PageRequest, call: Call): Promise<FormAnswer> {
  const units = await spokenIn(tx, req.principal, call);
  const read = readForm(strikeSetUp, { reason: req.fields.reason ?? '' }, units);
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const said = { struck: true, ...read.data } as const;
  await putSetUpRight(tx, req.principal, call.buildId, req.params.setUpId ?? '', said);
  return addressOf(req, { step: 'ratio' });
}

/** A set-up put right: what was learnt late, or said wrongly, counts for the readings already there. */
export const setUpCorrection: EntryCorrection = {
  path: '/set-ups/:setUpId',
  action: '/set-ups/:setUpId/correct',
  param: 'setUpId',
  // A set-up that was just begun is put right with its readings, not before them.
  entries: () => [],
  page({ context }, id, rejected) {
    const found = shownSetUps(context).find(({ setUp }) => setUp.id === id);
    if (found === undefined) throw notFound('set-up');
    const { setUp } = found;
    return {
      title: `Put set-up ${setUp.number} right, ${valveName(setUp)}`,
      body: body(context, found, rejected),
    };
  },
  async post(tx, req) {
    const call = await getCall(tx, req.principal, callIdOf(req));
    if (req.fields.act === 'strike') return strikeOut(tx, req, call);
    const read = readForm(correctSetUp, changedFields(req.fields), await spokenIn(tx, req.principal, call));
    if (!read.ok) return { faults: read.faults, typed: req.fields };
    const { id } = await putSetUpRight(tx, req.principal, call.buildId, req.params.setUpId ?? '', read.data);
    return addressOf(req, { step: `ratio?set-up=${id}` });
  },
};
