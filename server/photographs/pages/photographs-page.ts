import { type Again, formSlot } from '../../calls/pages/forms-on-page.ts';
import { lookAt } from '../../calls/pages/sight.ts';
import { stepPage } from '../../calls/pages/step-page.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import type { Page } from '../../pages/render.ts';
import { listPhotographs } from '../photographs.ts';
import { gallery } from './gallery.ts';
import { uploadForm } from './upload-form.ts';

export async function photographsPage(tx: Tx, given: PageRequest, again?: Again): Promise<Page> {
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
