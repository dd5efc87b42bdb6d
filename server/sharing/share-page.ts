import { shareBuild } from '../../shared/schemas/commands.ts';
import type { Slot } from '../../views/parts/part.ts';
import { type Again, formSlot, type PageForm, type StepBody } from '../calls/pages/forms-on-page.ts';
import { dayText } from '../calls/pages/moments.ts';
import type { Sight } from '../calls/pages/sight.ts';
import { numberField, textField } from '../forms/fields.ts';
import { qrCode } from './qr-code.ts';
import type { ShareLink } from './share-links.ts';

const LABELS = { holder: 'Who the link is for', days: 'Days until it ends' };

function makeForm(sight: Sight): PageForm {
  const fresh = shareBuild.parse({});
  return {
    name: 'share',
    action: `${sight.base}/share`,
    title: 'Make a link',
    labels: LABELS,
    initial: { holder: sight.call.callerName || fresh.holder, days: String(fresh.days) },
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
  if (link.revokedAt !== undefined) return `ended by the desk ${dayText(link.revokedAt)}`;
  return link.expiresAt < now ? `ended ${dayText(link.expiresAt)}` : `until ${dayText(link.expiresAt)}`;
}

function linksTable(links: readonly ShareLink[], now: Date): Slot {
  return {
    template: '/parts/table',
    data: {
      caption: 'Links to this build',
      columns: [{ label: 'For' }, { label: 'Made' }, { label: 'State' }],
      rows: links.map((link) => ({ cells: [link.holder, dayText(link.createdAt), stateOf(link, now)] })),
      empty: 'No link yet. Whoever has one sees this build alone and can enter readings.',
    },
  };
}

function endForm(sight: Sight, link: ShareLink, index: number): Slot {
  return {
    template: '/pages/call/group',
    data: {
      title: `Link of ${link.holder}`,
      text: `Made ${dayText(link.createdAt)}`,
      slots: [
        formSlot(
          {
            name: `end-${index}`,
            action: `${sight.base}/share/${link.id}/end`,
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
function madeSlots(link: string): Slot[] {
  return [{ template: '/pages/call/link', data: { link, code: qrCode(link) } }];
}

export function shareBody(
  sight: Sight,
  links: readonly ShareLink[],
  now: Date,
  again: Again | undefined,
  made?: string,
): StepBody {
  const form = makeForm(sight);
  const open = links.filter((link) => link.revokedAt === undefined && link.expiresAt >= now);
  return {
    forms: [form],
    slots: [
      ...(made === undefined ? [] : madeSlots(made)),
      formSlot(form, again),
      linksTable(links, now),
      ...open.map((link, index) => endForm(sight, link, index)),
    ],
  };
}
