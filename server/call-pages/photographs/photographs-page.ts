import { loadContext } from '../../call/context.ts';
import { formComponent, type RejectedForm } from '../../call/forms.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../web/page-request.ts';
import type { Page } from '../../web/pages/render.ts';
import { type CallFrame, lastStep } from '../frame.ts';
import { stepPage } from '../step-page.ts';
import { galleryComponent } from './gallery.ts';
import { uploadForm } from './upload-form.ts';

export async function photographsPage(
  frame: CallFrame,
  tx: Tx,
  req: PageRequest,
  rejected?: RejectedForm,
): Promise<Page> {
  const context = await loadContext(tx, req);
  const form = uploadForm(context, rejected);
  const slots = [formComponent(form, rejected), galleryComponent(context)];
  return stepPage(
    frame,
    context,
    { step: lastStep(frame), title: 'Photograph the part and its marks', ofCall: true },
    { forms: [form], slots },
    rejected,
  );
}
