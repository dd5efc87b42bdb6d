import type { FastifyReply, FastifyRequest } from 'fastify';
import type { FormData } from '../../../views/parts/form.examples.ts';
import type { Deps } from '../../web/deps.ts';
import { type FormState, summaryOf } from '../../web/forms/fields.ts';
import { renderPage } from '../../web/pages/render.ts';
import { LABELS } from '../settings/access-fields.ts';
import { keepToItself } from './private-answer.ts';

interface SecretPage {
  readonly title: string;
  readonly intro: string;
  readonly form: FormData;
  /** What came back with a fault. */
  readonly shown: FormState;
}

/** The one form of a page whose address is a secret; with faults it answers 422 and says so in its title. */
export function secretPage(
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  { title, intro, form, shown }: SecretPage,
) {
  const refused = shown.faults.length > 0;
  keepToItself(deps, reply);
  return renderPage(deps, request, reply, {
    template: 'plain',
    title: refused ? `Error: ${title}` : title,
    status: refused ? 422 : 200,
    data: {
      title,
      intro,
      errors: summaryOf(shown, LABELS),
      sections: [{ template: '/parts/form', data: form }],
    },
  });
}
