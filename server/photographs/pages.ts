import multipart from '@fastify/multipart';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Slot } from '../../views/parts/part.ts';
import type { PhotographsData } from '../../views/parts/photographs.examples.ts';
import { requireBuild } from '../access/caller.ts';
import { getCall } from '../calls/calls.ts';
import { type Again, formSlot, type PageForm } from '../calls/pages/forms-on-page.ts';
import { momentText } from '../calls/pages/moments.ts';
import { callIdOf, lookAt, type Sight } from '../calls/pages/sight.ts';
import { stepPage } from '../calls/pages/step-page.ts';
import type { Tx } from '../database/database.ts';
import type { Deps } from '../deps.ts';
import { fieldId, selectField, textField } from '../forms/fields.ts';
import { type Fields, readForm } from '../forms/read-form.ts';
import { getPage, type PageRequest, type PageSide, received } from '../http/page-route.ts';
import { idempotencyKey, perform } from '../http/perform.ts';
import { type Page, renderPage } from '../pages/render.ts';
import { Failure } from '../problems/failure.ts';
import {
  keepPhotograph,
  listPhotographs,
  newPhotograph,
  type Photograph,
  photographBytes,
  SHOWS,
} from './photographs.ts';
import { MOST_BYTES, reEncode } from './re-encode.ts';

const LABELS = { shows: 'What it shows', caption: 'What to look at', picture: 'Photograph' };

function isShown(word: string): word is keyof typeof SHOWS {
  return Object.hasOwn(SHOWS, word);
}

function uploadForm(sight: Sight, again: Again | undefined): PageForm {
  const fault = again?.faults.find((each) => each.field === 'picture');
  return {
    name: 'photograph',
    action: `${sight.base}/photographs`,
    labels: LABELS,
    title: 'Keep a photograph',
    buttons: [{ kind: 'primary', label: 'Keep photograph' }],
    groups: (shown) => [
      {
        slots: [
          {
            template: '/parts/file',
            data: {
              id: fieldId('picture'),
              name: 'picture',
              label: LABELS.picture,
              accept: 'image/jpeg,image/png,image/webp',
              hint: 'JPEG, PNG or WebP, 12 MB at the most. The place where it was taken is left out.',
              ...(fault === undefined ? {} : { error: `${LABELS.picture} ${fault.detail}` }),
            },
          },
          selectField(shown, 'shows', LABELS.shows, SHOWS),
          textField(shown, 'caption', LABELS.caption, { optional: true }),
        ],
      },
    ],
  };
}

function gallery(sight: Sight, photographs: readonly Photograph[]): Slot {
  if (photographs.length === 0) {
    return {
      template: '/parts/empty',
      data: {
        id: 'no-photographs',
        title: 'No photograph yet',
        text: 'Both sides of the arm, the mark as near as it stays sharp, and the box.',
      },
    };
  }
  const data: PhotographsData = {
    photographs: photographs.map((each) => {
      const shows = isShown(each.shows) ? SHOWS[each.shows] : each.shows;
      return {
        href: `${sight.base}/photographs/${each.id}`,
        width: each.width,
        height: each.height,
        alt: each.caption === '' ? shows : `${shows}: ${each.caption}`,
        shows,
        caption: each.caption,
        who: each.by,
        when: momentText(each.at),
      };
    }),
  };
  return { template: '/parts/photographs', data };
}

async function photographsPage(tx: Tx, given: PageRequest, again?: Again): Promise<Page> {
  const sight = await lookAt(tx, given);
  const form = uploadForm(sight, again);
  const upload = formSlot(form, again);
  const slots = [
    { ...upload, data: { ...upload.data, upload: true } },
    gallery(sight, await listPhotographs(tx, given.caller, sight.build.id)),
  ];
  return stepPage(
    sight,
    { step: 'parts', title: 'Photograph the part and its marks' },
    { forms: [form], slots },
    again,
  );
}

interface Posted {
  readonly typed: Fields;
  readonly picture: Buffer | undefined;
  readonly tooLarge: boolean;
}

/** Reads the parts of an upload; more than one file, or a larger one, is not taken. */
async function postedParts(request: FastifyRequest): Promise<Posted> {
  const typed: Record<string, string> = {};
  let picture: Buffer | undefined;
  let tooLarge = false;
  for await (const part of request.parts()) {
    if (part.type === 'field') typed[part.fieldname] = String(part.value);
    else {
      try {
        picture = await part.toBuffer();
      } catch {
        tooLarge = true;
      }
    }
  }
  return { typed, picture: picture?.length === 0 ? undefined : picture, tooLarge };
}

function uploadRoute(app: FastifyInstance, deps: Deps, side: PageSide, base: string): void {
  app.post(
    `${base}/photographs`,
    { bodyLimit: MOST_BYTES + 64 * 1024, schema: { hide: true } },
    async (request, reply) => {
      // Who it is comes first: a stranger's upload is not read.
      const given = await received(request, reply, deps, side);
      const sight = await deps.db.inShop(given.caller.shopId, (tx) => lookAt(tx, given));
      requireBuild(given.caller, sight.build.id, 'write');
      const posted = await postedParts(request);
      const { key, form: _, ...fields } = posted.typed;
      const refuse = async (field: string, detail: string) => {
        const again = { faults: [{ field, detail }], typed: { ...fields, form: 'photograph' } };
        const page = await deps.db.inShop(given.caller.shopId, (tx) => photographsPage(tx, given, again));
        return renderPage(deps, request, reply, {
          ...page,
          title: `Error: ${page.title}`,
          status: 422,
          caller: given.caller,
        });
      };
      if (posted.tooLarge) return refuse('picture', 'has more than 12 MB');
      if (posted.picture === undefined) return refuse('picture', 'is missing: choose one first');
      const read = readForm(newPhotograph, fields, { lengths: 'in' });
      if (!read.ok) return refuse(read.faults[0]?.field ?? '', read.faults[0]?.detail ?? '');
      try {
        const image = await reEncode(posted.picture);
        const outcome = await perform(
          deps.db,
          given.caller,
          {
            method: 'POST',
            path: request.url,
            body: { ...fields, picture: image.jpeg.toString('base64') },
            key: idempotencyKey(key || undefined),
            whileRunning: 'wait',
          },
          async (tx) => {
            await keepPhotograph(tx, given.caller, sight.build.id, read.data, image);
            return { status: 303, body: {}, location: `${sight.base}/photographs` };
          },
        );
        return await reply
          .code(303)
          .header('location', outcome.location ?? sight.base)
          .header('cache-control', 'no-store')
          .send();
      } catch (error) {
        if (
          error instanceof Failure &&
          ['media-type-not-taken', 'body-too-large', 'conflict'].includes(error.code)
        ) {
          return refuse('picture', `can’t be kept: ${error.detail}`);
        }
        throw error;
      }
    },
  );
}

function photographRoutes(app: FastifyInstance, deps: Deps, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  getPage(app, deps, { url: `${base}/photographs`, side, page: photographsPage });
  uploadRoute(app, deps, side, base);
  app.get(`${base}/photographs/:photographId`, { schema: { hide: true } }, async (request, reply) => {
    const given = await received(request, reply, deps, side);
    const jpeg = await deps.db.inShop(given.caller.shopId, async (tx) => {
      const { buildId } = await getCall(tx, given.caller, callIdOf(given));
      return photographBytes(tx, given.caller, buildId, given.params.photographId ?? '');
    });
    return reply.type('image/jpeg').header('cache-control', 'private, max-age=3600').send(jpeg);
  });
}

/** Photographs of a call, on both sides. */
export function photographPages(app: FastifyInstance, deps: Deps): void {
  app.register(async (uploads) => {
    await uploads.register(multipart, {
      limits: { fileSize: MOST_BYTES, files: 1, fields: 12, fieldSize: 4096 },
    });
    photographRoutes(uploads, deps, 'desk');
    photographRoutes(uploads, deps, 'bench');
  });
}
