import { shareBuild } from '../../../shared/schemas/commands.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { formComponent, type PageForm, type RejectedForm, type StepBody } from '../../call/forms.ts';
import type { ShareLink } from '../../records/share-links/share-links.ts';
import { tableComponent } from '../../web/components.ts';
import { dayText } from '../../web/dates.ts';
import { numberField, textField } from '../../web/forms/fields.ts';
import { qrCode } from '../qr-code.ts';

const LABELS = { holder: 'Who the link is for', days: 'Days until it ends' };

function makeForm(context: CallContext): PageForm {
  const fresh = shareBuild.parse({});
  return {
    name: 'share',
    action: `${context.base}/share`,
    title: 'Make a link',
    labels: LABELS,
    initial: { holder: context.call.callerName || fresh.holder, days: String(fresh.days) },
    groups: (shown) => [
      {
        slots: [
          textField(shown, 'holder', LABELS.holder, {
            hint: 'Entries made with it are signed with this name.',
          }),
          numberField(shown, 'days', LABELS.days),
        ],
      },
    ],
    buttons: [{ label: 'Make a link', kind: 'primary', key: 'k' }],
  };
}

function stateOf(link: ShareLink, now: Date): string {
  if (link.revokedAt !== undefined) return `ended by the desk ${dayText(link.revokedAt, now)}`;
  return link.expiresAt < now
    ? `ended ${dayText(link.expiresAt, now)}`
    : `until ${dayText(link.expiresAt, now)}`;
}

function linksTable(links: readonly ShareLink[], now: Date): TableData {
  return {
    caption: 'Links to this build',
    columns: [{ label: 'For' }, { label: 'Made' }, { label: 'State' }],
    rows: links.map((link) => ({ cells: [link.holder, dayText(link.createdAt, now), stateOf(link, now)] })),
    empty: 'No link yet. Whoever has one sees this build alone and can enter readings.',
  };
}

function endFormComponent(context: CallContext, link: ShareLink, index: number): Component {
  return {
    template: '/pages/call/group',
    data: {
      title: `Link of ${link.holder}`,
      text: `Made ${dayText(link.createdAt)}`,
      slots: [
        formComponent(
          {
            name: `end-${index}`,
            action: `${context.base}/share/${link.id}/end`,
            labels: {},
            groups: () => [],
            buttons: [{ label: 'End this link', kind: 'danger' }],
          },
          undefined,
        ),
      ],
    },
  };
}

/** A link just made. Its secret stands on this one page and is kept nowhere. */
function madeComponents(link: string): Component[] {
  return [{ template: '/pages/call/link', data: { link, code: qrCode(link) } }];
}

export function shareBody(
  context: CallContext,
  links: readonly ShareLink[],
  now: Date,
  rejected: RejectedForm | undefined,
  made?: string,
): StepBody {
  const form = makeForm(context);
  const open = links.filter((link) => link.revokedAt === undefined && link.expiresAt >= now);
  return {
    forms: [form],
    slots: [
      ...(made === undefined ? [] : madeComponents(made)),
      formComponent(form, rejected),
      tableComponent(linksTable(links, now)),
      ...open.map((link, index) => endFormComponent(context, link, index)),
    ],
  };
}
