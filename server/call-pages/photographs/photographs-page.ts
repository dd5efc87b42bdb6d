import { loadContext } from '../../call/context.ts';
import { formComponent, type RejectedForm } from '../../call/forms.ts';
import type { Tx } from '../../database/database.ts';
import { listPhotographs } from '../../records/photographs/photographs.ts';
import type { PageRequest } from '../../web/page-route.ts';
import type { Page } from '../../web/pages/render.ts';
import { stepPage } from '../step-page.ts';
import { gallery } from './gallery.ts';
import { uploadForm } from './upload-form.ts';

export async function photographsPage(tx: Tx, req: PageRequest, rejected?: RejectedForm): Promise<Page> {
  const context = await loadContext(tx, req);
  const form = uploadForm(context, rejected);
  const slots = [
    formComponent(form, rejected),
    gallery(context, await listPhotographs(tx, req.principal, context.build.id)),
  ];
  return stepPage(
    context,
    { step: 'parts', title: 'Photograph the part and its marks' },
    { forms: [form], slots },
    rejected,
  );
}
